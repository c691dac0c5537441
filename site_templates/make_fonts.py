"""Make the font subsets of pages and figures from the files of Debian's packages fonts-routed-gothic and fonts-texgyre.

`python site_templates/make_fonts.py /usr/share` searches that directory. It writes `fonts/*.woff2` for pages and, of
the same glyphs, `fonts/layout/*` for figures, because the layout reads neither WOFF2 nor the page. It needs fonttools
and brotli.
"""

import sys
from math import atan2, cos, pi, sin
from pathlib import Path

from fontTools import subset
from fontTools.pens.boundsPen import BoundsPen
from fontTools.pens.cu2quPen import Cu2QuPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib import TTFont, newTable
from fontTools.ttLib.tables._g_l_y_f import Glyph

FONTS = Path(__file__).resolve().parent / "fonts"
LATIN = "".join(map(chr, range(0x20, 0x7F))) + (
    "\u00a0\u00ad§©°±²³µ·¼½¾⅛⅜⅝⅞×÷ÀÄÅÇÈÉÖÜßàäåçèéêëíïñóöøúü–—‘’“”†•…′″‹›⁄€←↑→↓−≈≠≤≥√∞ℓ"
)
GREEK = "".join(map(chr, [*range(0x391, 0x3A2), *range(0x3A3, 0x3AA), *range(0x3B1, 0x3CA)]))
OPERATORS = " \u00a00123456789+−=<>≤≥≈≠±×·÷/()[]{}|‖√∑Σ∫∂∇∞→←↑↓⊙⊗⋅∙…,;:!′″°%⟨⟩‾¯^~̂̇" + "".join(
    map(chr, range(0x2061, 0x2065))
)
MATH_ITALIC = "".join(map(chr, [*range(0x1D434, 0x1D468), *range(0x1D6E2, 0x1D71C), 0x210E]))
# upright code point -> the mathematical italic that draws it
ITALIC_OF = {
    **{0x391 + i: 0x1D6E2 + i for i in range(25) if i != 17},
    **{0x3B1 + i: 0x1D6FC + i for i in range(25)},
    0x3D5: 0x1D719,
}
FEATURES = ["kern", "liga", "lnum", "tnum", "pnum"]


def main(source: Path) -> None:
    """Write every subset, compressed for pages and plain for the layout."""

    def found(name: str) -> TTFont:
        return TTFont(next(iter(sorted(source.rglob(name)))), recalcTimestamp=False)

    mathematics = found("texgyreschola-math.otf")
    for cut in ("regular", "italic", "bold"):
        font = found(f"texgyreschola-{cut}.otf")
        if cut == "italic":
            font = with_italic_greek(font, mathematics)
        rename(font, "Hub Schola", cut.capitalize())
        write(font, f"schola-{cut}", LATIN + GREEK, FEATURES)
    rename(mathematics, "Hub Schola Math", "Regular")
    # upright letters come from the text face, which is of the same design; the lighter cuts for small scripts would
    # double the file
    write(mathematics, "schola-math", MATH_ITALIC + OPERATORS + "ϕϑϵ", ["dtls"])
    for name, family in (("lettering", "Hub Lettering"), ("lettering-narrow", "Hub Lettering Narrow")):
        font = found(f"{name.replace('lettering', 'routed-gothic')}.ttf")
        give_digits_one_width(font)
        rename(font, family, "Regular")
        write(font, name, LATIN, ["kern", "liga"])


def write(font: TTFont, name: str, characters: str, features: list[str]) -> None:
    """Subset a font and write it as WOFF2 and as it is."""
    options = subset.Options()
    options.layout_features = features
    options.name_IDs = [0, 1, 2, 3, 4, 5, 6, 13, 14]
    options.notdef_outline = True
    options.hinting = False
    options.recalc_timestamp = False
    options.drop_tables += ["FFTM"]
    subsetter = subset.Subsetter(options)
    subsetter.populate(text=characters)
    subsetter.subset(font)
    font.save(FONTS / "layout" / f"{name}.{'otf' if 'CFF ' in font else 'ttf'}", reorderTables=True)
    font.flavor = "woff2"
    font.save(FONTS / f"{name}.woff2", reorderTables=False)


def rename(font: TTFont, family: str, cut: str) -> None:
    """Give a changed font its own name, as its licence asks; copyright and licence entries stay."""
    full = family if cut == "Regular" else f"{family} {cut}"
    texts = {1: family, 2: cut, 3: full, 4: full, 6: full.replace(" ", ""), 16: family, 17: cut}
    for entry in font["name"].names:
        if entry.nameID in texts:
            entry.string = texts[entry.nameID]
    if "CFF " in font:
        names = font["CFF "].cff
        names.fontNames = [full.replace(" ", "")]
        names.topDictIndex[0].FullName = full
        names.topDictIndex[0].FamilyName = family


def with_italic_greek(font: TTFont, mathematics: TTFont) -> TTFont:
    """Return the italic with quadratic outlines and the Greek of its mathematical companion.

    The text italic has upright Greek only in part; a symbol in a label is to look like the one in a formula.
    """
    from_characters, glyphs = mathematics.getBestCmap(), mathematics.getGlyphSet()
    own = font.getGlyphSet()
    order = list(font.getGlyphOrder())
    outlines: dict[str, Glyph] = {name: quadratic(own, name) for name in order}
    widths = dict(font["hmtx"].metrics)
    mapping: dict[int, str] = {}
    for upright, slanted in ITALIC_OF.items():
        name = f"italic{upright:04X}"
        outlines[name] = quadratic(glyphs, from_characters[slanted])
        widths[name] = (mathematics["hmtx"][from_characters[slanted]][0], 0)
        order.append(name)
        mapping[upright] = name
    # both micro signs, the ohm and the increment sign follow the Greek letters
    mapping |= {0xB5: mapping[0x3BC], 0x2126: mapping[0x3A9], 0x2206: mapping[0x394]}
    font.setGlyphOrder(order)
    font["loca"], font["glyf"] = newTable("loca"), newTable("glyf")
    font["glyf"].glyphOrder, font["glyf"].glyphs = order, outlines
    font["hmtx"].metrics = {
        name: (width, getattr(outlines[name], "xMin", 0) or 0) for name, (width, _) in widths.items()
    }
    for table in font["cmap"].tables:
        if table.isUnicode():
            table.cmap.update(mapping)
    maximum = font["maxp"]
    maximum.tableVersion = 0x00010000
    zeros = "maxTwilightPoints maxStorage maxFunctionDefs maxInstructionDefs maxStackElements maxSizeOfInstructions"
    for field in (*zeros.split(), "maxComponentElements", "maxComponentDepth", "maxCompositePoints"):
        setattr(maximum, field, 0)
    maximum.maxZones, maximum.maxCompositeContours = 1, 0
    maximum.numGlyphs = len(order)
    maximum.recalc(font)
    font["post"].formatType = 2.0
    font["post"].extraNames, font["post"].mapping, font["post"].glyphOrder = [], {}, order
    font.sfntVersion = "\x00\x01\x00\x00"
    for table in ("CFF ", "VORG"):
        if table in font:
            del font[table]
    return font


def quadratic(glyphs: object, name: str) -> Glyph:
    """Return a cubic glyph as quadratic outlines, within half a thousandth of the em."""
    pen = TTGlyphPen(glyphs)
    glyphs[name].draw(Cu2QuPen(pen, 0.5, reverse_direction=True))
    glyph = pen.glyph()
    glyph.recalcBounds(None)
    return glyph


def give_digits_one_width(font: TTFont) -> None:
    """Centre every digit on one width, and give the 1, which is a bare stroke, a flag."""
    characters, glyphs, table, metrics = font.getBestCmap(), font.getGlyphSet(), font["glyf"], font["hmtx"]
    width = max(metrics[characters[ord(digit)]][0] for digit in "0123456789")
    bounds = BoundsPen(glyphs)
    glyphs[characters[ord("1")]].draw(bounds)
    left, bottom, right, top = bounds.bounds
    radius, stem = (right - left) / 2, width * 0.54
    pen = TTGlyphPen(glyphs)
    stroke(pen, stem, bottom + radius, stem, top - radius, radius)
    stroke(pen, stem, top - radius, stem - width * 0.21, top - radius - width * 0.20, radius)
    table[characters[ord("1")]] = pen.glyph()
    table[characters[ord("1")]].recalcBounds(table)
    metrics[characters[ord("1")]] = (width, table[characters[ord("1")]].xMin)
    for digit in "023456789":
        name = characters[ord(digit)]
        glyph, missing = table[name], width - metrics[name][0]
        if missing and glyph.numberOfContours > 0:
            glyph.coordinates.translate((missing // 2, 0))
            glyph.recalcBounds(table)
            metrics[name] = (width, glyph.xMin)


def stroke(pen: TTGlyphPen, x0: float, y0: float, x1: float, y1: float, radius: float) -> None:
    """Draw a line with round ends as a closed contour."""
    along, count = atan2(y1 - y0, x1 - x0), 12
    turns = [(x0, y0, along + pi / 2 + pi * i / count) for i in range(count + 1)]
    turns += [(x1, y1, along - pi / 2 + pi * i / count) for i in range(count + 1)]
    points = [(round(x + radius * cos(t)), round(y + radius * sin(t))) for x, y, t in turns][::-1]
    pen.moveTo(points[0])
    for point in points[1:]:
        pen.lineTo(point)
    pen.closePath()


if __name__ == "__main__":
    main(Path(sys.argv[1]))
