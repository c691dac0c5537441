"""Each page with a figure is shared with a picture: there, of the shape asked for, not empty, named in the head."""

from pathlib import Path

from matplotlib.image import imread

from theme import page_reading

ADDRESS = "https://hill-rescue.example/"


def test_every_lesson_names_a_picture_that_is_there(demonstration: Path) -> None:
    lessons = sorted((demonstration / "lessons").glob("*.html"))
    assert len(lessons) == 12
    for page in [*lessons, demonstration / "index.html"]:
        metas = {
            one.attributes["property"]: one.attributes["content"]
            for one in page_reading.read(page).elements
            if one.tag == "meta" and "property" in one.attributes
        }
        picture = metas["og:image"] or ""
        assert picture.startswith(ADDRESS)
        assert metas["og:url"] == ADDRESS + page.relative_to(demonstration).as_posix()
        assert metas["og:title"]
        pixels = imread(demonstration / picture.removeprefix(ADDRESS))
        assert pixels.shape[:2] == (630, 1200)
        # words at the left and a figure at the right: neither half is bare paper
        assert all(half.std() > 0.02 for half in (pixels[:, :420, :3], pixels[:, 430:, :3]))
