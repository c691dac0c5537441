"""The content pipeline: Jinja in Markdown, figures, claims, worked steps and the MkDocs plugin."""
