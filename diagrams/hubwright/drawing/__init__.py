"""How any scene looks: drafting primitives, label layout and the writers of SVG, PNG and PDF."""
