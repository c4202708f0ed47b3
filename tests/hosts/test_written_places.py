"""What the finder learns of a page that somebody wrote by hand."""

from __future__ import annotations

from rimbook.hosts.written_places import written_places

GLOSSARY = """<dl><dt>Cross</dt><dd>A string across. <em>Also called:</em> weft.</dd>
<dt>Gauge</dt>\n<dd>The diameter of a string.</dd><dt>Measured, confirmed</dt><dd>By a person.</dd></dl>"""


def test_every_word_of_the_glossary_is_found_and_its_plural() -> None:
    page, *words = written_places("Glossary", "glossary/index.html", (), GLOSSARY)
    assert (page.kind, page.title) == ("page", "Glossary")
    assert [(word.kind, word.title, word.also) for word in words] == [
        ("word", "Cross", ("weft", "Crosses")),
        ("word", "Gauge", ("Gauges",)),
        ("word", "Measured, confirmed", ("Measured", "confirmed")),
    ]


def test_a_list_on_another_page_is_no_glossary() -> None:
    tools = "<dl><dt>A sharp blade</dt><dd>For barrels that stand proud.</dd></dl>"
    headings = (("Tools", "tools"),)
    places = list(written_places("How to regrommet", "regrommet/index.html", headings, tools))
    assert [(place.kind, place.title) for place in places] == [
        ("page", "How to regrommet"),
        ("page", "Tools"),
    ]
