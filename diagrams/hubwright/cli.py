"""The command `hubwright`: thin wrappers that read options, call one function and print what it returns."""

import sys
from pathlib import Path
from typing import Literal

import click

from hubwright import __version__
from hubwright.errors import HubwrightError

# Imported where used: matplotlib, mkdocs, rich and pydantic are slow to load and `--help` needs none of them.

WHEELS = ("front_left", "front_right", "rear_left", "rear_right", "left", "right")
Units = Literal["si", "us"]
Form = Literal["table", "json", "csv"]
Picture = Literal["svg", "outlined", "pdf", "png", "html"]
Sheet = Literal["light", "dark", "transparent"]

_site = click.argument(
    "directory", type=click.Path(exists=True, file_okay=False, path_type=Path), default=Path(), metavar="[SITE]"
)


class _Group(click.Group):
    """A group whose own errors leave as one message and exit code 2."""

    def invoke(self, ctx: click.Context) -> object:
        try:
            return super().invoke(ctx)
        except HubwrightError as error:
            click.echo(str(error), err=True)
            sys.exit(2)


@click.group(cls=_Group, context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100})
@click.version_option(__version__, prog_name="hubwright")
def main() -> None:
    """Explain what loads a wheel bearing: loads, free bodies to scale and a lesson site from one vehicle file."""


@main.command()
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--json", "form", flag_value="json", help="Print one JSON object in SI units, full precision.")
@click.option("--csv", "form", flag_value="csv", help="Print rows of name, value and SI unit.")
@click.option(
    "--wheel",
    type=click.Choice(WHEELS),
    default=None,
    help="The wheel to look at; default: the left one of the hub described.",
)
@click.option(
    "--units", type=click.Choice(["si", "us"]), default="si", show_default=True, help="Unit system of the table."
)
def solve(file: Path, form: Form | None, wheel: str | None, units: Units) -> None:
    """Compute every load of a vehicle, trailer, setup or beam FILE and print it."""
    from hubwright.results.printing import solved_text

    click.echo(solved_text(file, form=form or "table", wheel=wheel, units=units), nl=False)


@main.command()
@click.argument("files", nargs=-1, required=True, type=click.Path(path_type=Path), metavar="BASE OTHER...")
@click.option("--json", "as_json", is_flag=True, help="Print one JSON object in SI units, full precision.")
@click.option(
    "--wheel",
    type=click.Choice(WHEELS),
    default=None,
    help="The wheel to look at; default: the one of the axle that wears most after the change.",
)
@click.option(
    "--units", type=click.Choice(["si", "us"]), default="si", show_default=True, help="Unit system of the tables."
)
def compare(files: tuple[Path, ...], as_json: bool, wheel: str | None, units: Units) -> None:
    """Compare setups with a BASE: loads and lives as ratios with spans, and what each change does."""
    from hubwright.results.comparison_text import compared_text

    if len(files) < 2:
        raise click.UsageError("name at least two files: the base, and what to compare with it")
    click.echo(compared_text(files, as_json=as_json, wheel=wheel, units=units), nl=False)


@main.command()
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--figure", required=True, metavar="NAME", help='A figure, such as "side view", or: all.')
@click.option(
    "--against",
    type=click.Path(path_type=Path),
    multiple=True,
    help='A second FILE, for figures that compare two setups; again for a third and more in "setups compared".',
)
@click.option(
    "--case", default=None, metavar="NAME", help="The load case; default: the first that the figure can show."
)
@click.option(
    "--wheel",
    type=click.Choice(WHEELS),
    default=None,
    help="The wheel to look at; default: the left one of the hub described.",
)
@click.option("--units", type=click.Choice(["si", "us"]), default="si", show_default=True, help="Unit system.")
@click.option(
    "--form",
    type=click.Choice(["svg", "outlined", "pdf", "png", "html"]),
    default="svg",
    show_default=True,
    help="File form; outlined: SVG whose text is outlines; html: a snippet for pasting into a page.",
)
@click.option("--size", default=None, metavar="WxH", help="A frame of so many pixels, such as 1920x1080 or 1080x1920.")
@click.option(
    "--steps", is_flag=True, help="Write one picture for each step; frames of 1920x1080 unless --size says other."
)
@click.option("--title/--no-title", default=True, show_default=True, help="Set the title above the figure.")
@click.option("--sheet", type=click.Choice(["light", "dark", "transparent"]), default="light", show_default=True)
@click.option(
    "--out", type=click.Path(file_okay=False, path_type=Path), default=Path(), help="Folder to write to; default: here."
)
def export(
    file: Path,
    figure: str,
    against: tuple[Path, ...],
    case: str | None,
    wheel: str | None,
    units: Units,
    form: Picture,
    size: str | None,
    steps: bool,
    title: bool,
    sheet: Sheet,
    out: Path,
) -> None:
    """Write a figure of a vehicle, setup or beam FILE as a picture, or step by step for a film."""
    from hubwright import export as writing

    wish = writing.Wish(form, None if size is None else writing.read_size(size), steps, title, sheet)
    written, left_out = writing.export(
        file, figure=figure, case=case, wheel=wheel, units=units, wish=wish, out=out, against=against
    )
    for path in written:
        click.echo(f"wrote {path}")
    for reason in left_out:
        click.echo(f"left out: {reason}", err=True)


@main.command()
@_site
def check(directory: Path) -> None:
    """List everything wrong in a SITE (default: here): files, lessons, claims, numbers without a source."""
    from hubwright.lessons.check import check_site

    problems = check_site(directory)
    for problem in problems:
        click.echo(str(problem), err=True)
    failures = [problem for problem in problems if problem.fails]
    if failures:
        sys.exit(2)
    click.echo("nothing wrong" if not problems else f"nothing wrong; {len(problems)} to think about")


@main.command()
@_site
@click.option(
    "--out",
    type=click.Path(file_okay=False, path_type=Path),
    default=None,
    help="Where the site goes; default: site_dir of mkdocs.yml.",
)
def build(directory: Path, out: Path | None) -> None:
    """Build a SITE (default: here); when anything fails, the last good one stays as it was."""
    from hubwright.lessons.site_build import build_site

    written = build_site(directory, out=out)
    click.echo(f"built {written / 'index.html'}")


@main.command()
@_site
@click.option("--address", default=None, metavar="HOST:PORT", help="Where to serve; default: 127.0.0.1:8000.")
@click.option("--browser/--no-browser", default=True, show_default=True, help="Open the site in a browser.")
def serve(directory: Path, address: str | None, browser: bool) -> None:
    """Show a SITE in a browser and rebuild when a lesson, vehicle or setup changes."""
    from hubwright.lessons.site_build import serve_site

    serve_site(directory, address=address, browser=browser)


@main.command()
@click.argument("directory", type=click.Path(path_type=Path))
@click.option("--yes", is_flag=True, help="Ask nothing; take the demonstration's answers.")
def new(directory: Path, yes: bool) -> None:
    """Start a site about your own vehicle in a new DIRECTORY, from at most ten answers."""
    from hubwright.new_site import demonstration_answers, refuse_existing, write_site

    refuse_existing(directory)
    answers = demonstration_answers() if yes else _ask()
    written = write_site(directory, answers)
    for path in written:
        click.echo(f"wrote {path}")
    click.echo(
        f"""
Next:
  1. hubwright check {directory}    lists what is missing or estimated
  2. hubwright serve {directory}    shows the site and follows your changes
  3. open {written[0]}, replace what is estimated, add your gear; then: hubwright build {directory}"""
    )


def _ask() -> dict[str, str]:
    """Ask the owner, one question at a time, until every answer can be used."""
    from hubwright.new_site import UNKNOWN, questions

    answers: dict[str, str] = {}
    click.echo("At most ten questions. Write values with their unit.")
    while open_questions := [question for question in questions(answers) if question.key not in answers]:
        question = open_questions[0]
        click.echo(f"\n{question.text}")
        click.echo(f"  {question.where}")
        click.echo(f"  Like {question.example}." + ("" if question.needed else f" Or: {UNKNOWN}."))
        while True:
            answer = click.prompt("  >", prompt_suffix=" ").strip()
            answer = UNKNOWN if answer.lower().replace("\u2019", "'") in (UNKNOWN, "dont know", "?") else answer
            problem = question.problem(answer)
            if problem is None:
                break
            click.echo(f"  {problem}")
        answers[question.key] = answer
    return answers
