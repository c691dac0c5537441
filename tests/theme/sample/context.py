"""The template variable that the plugin gives to the theme, filled by hand for a sample of every part."""

QUESTIONS = ("What hangs on what?", "How hard is the pull?", "What does a longer gate change?", "Does it sag?")
PAGES = {1: "lessons/1.html", 2: "lessons/2.html"}


def hubwright(page):
    number = page.meta.get("lesson") if page else None
    return {
        "course": "What holds the gate",
        "address": "gate.example",
        "setup_name": "Yard gate, oak",
        "setup_url": "reports/yard-gate.html",
        "wheel": "upper hinge",
        "left_over": both("0.00 N", "0.00 lbf"),
        "built": "1 March 2026",
        "lesson": number,
        "sheet": f"{number} of 4" if number else "",
        "kind": "lesson" if number else page.meta.get("kind", "page") if page else "page",
        "summary": "How a gate hangs.",
        "lessons": [
            {"number": n, "question": words, "url": PAGES.get(n, ""), "current": n == number, "available": n in PAGES}
            for n, words in enumerate(QUESTIONS, 1)
        ],
        "extras": [{"mark": "R", "title": "Setup report", "url": "reports/yard-gate.html"}],
        "estimated": [
            {
                "key": "hinge.spread",
                "value_html": both("900 mm", "35.4 in"),
                "range_html": "±50 mm",
                "note": "measured once",
            }
        ]
        if number
        else [],
        "figures_css": "",
    }


def both(si, us):
    return f'<span class="q"><span class="si">{si}</span><span class="us">{us}</span></span>'


def on_page_context(context, page, config, nav):
    context["hubwright"] = hubwright(page)


def on_template_context(context, template_name, config):
    context["hubwright"] = hubwright(None)
