"""A scene with every item of the vocabulary, for tests of the drawing; its body closes by construction."""

from math import cos, pi, sin

from hubwright.scenes import vocabulary as v

WHOLE = v.View("whole", (96, 110), 1 / 5, newtons_per_mm=170.0, mirrored=True)
DETAIL = v.View(
    "detail A",
    (190, 115),
    4 / 5,
    newtons_per_mm=170.0,
    mirrored=True,
    frame=(138, 55, 255, 175),
    title="Detail A  4 : 5",
)
PLOT = v.View("plot", (270, 120), 1 / 5, vertical_per_mm=50.0)


def circle(x, y, r, n=40):
    return tuple((x + r * cos(2 * pi * i / n), y + r * sin(2 * pi * i / n)) for i in range(n))


def box(x0, y0, x1, y1):
    return ((x0, y0), (x1, y0), (x1, y1), (x0, y1))


def label(*lines, place="right", **more):
    return v.Label(tuple(lines), place=place, **more)


def every_item() -> v.Scene:
    items = (
        v.Part("part-tire", "whole", 1, rings=(circle(12, 0, 370), circle(12, 0, 200)), material="rubber", outline=0.4),
        v.Part("disc", "whole", 1, rings=(box(20, -190, 30, 190),), material="turning", hatch=45.0, hatch_pitch=0.7),
        v.Part("part-hub", "detail A", 1, rings=(box(-30, -20, 40, 20),), material="turning", hatch=45.0, outline=0.35),
        v.Part(
            "part-knuckle", "detail A", 1, rings=(box(-90, 40, 20, 90),), material="fixed", hatch=-45.0, outline=0.35
        ),
        v.Part("part-shaft", "detail A", 1, rings=(box(-70, -8, 60, 8),), material="steel"),
        v.Line("axis", "detail A", 1, points=((-80, 0), (70, 0)), style="centre", extend=3, clipped=False),
        v.Line("load line", "whole", 2, points=((12, -380), (12, 380)), style="centre", tone="load"),
        v.Line("hidden edge", "detail A", 1, points=((-30, 14), (40, 14)), style="hidden"),
        v.Line("was here", "detail A", 1, points=((-30, -30), (40, -30)), style="phantom", tone="before"),
        v.Ground("ground", "whole", 1, start=(-200, -370), end=(220, -370)),
        v.Dot("centre", "detail A", 1, at=(0, 0)),
        v.Dot("mass", "whole", 1, at=(40, 0), kind="centre of mass", radius=1.0),
        v.Note(
            "label-knuckle",
            "detail A",
            1,
            label=label("Knuckle", place="right column", anchor=(-60, 60), leader_dot=True),
        ),
        v.Note("label-hub", "detail A", 1, label=label("Hub", place="right column", anchor=(-20, 15), leader_dot=True)),
        v.Note(
            "label-disc", "whole", 1, label=label("Wheel disc", place="left column", anchor=(25, 120), leader_dot=True)
        ),
        v.Note(
            "label-tire",
            "whole",
            1,
            label=label("Tire 245/75R16", place="left column", anchor=(220, 200), leader_dot=True),
        ),
        v.Note("label-c", "detail A", 1, label=label("{C}", place="right", anchor=(0, 0))),
        v.Force(
            "force-F_z",
            "whole",
            2,
            at=(12, -370),
            vector=(0, 5490),
            label=label("*{F|z} = 5.49 kN", "road on tire", place="right", tone="load", size=2.8),
            gap=0.4,
        ),
        v.Force(
            "reaction-B_z",
            "whole",
            3,
            at=(0, 0),
            vector=(0, -5100),
            role="reaction",
            label=label("*{B|z} = 5.10 kN", "bearing on hub", place="left column", tone="reaction"),
        ),
        v.Force(
            "force-W",
            "whole",
            2,
            at=(40, 0),
            vector=(0, -390),
            tip_at_point=False,
            label=label("*{W} = 0.39 kN", "weight", place="left column", tone="load"),
        ),
        *(
            v.Force(f"force-p{i}", "whole", 2, at=(12 + 14 * (i - 2.5), -370), vector=(0, 915), slender=True)
            for i in range(6)
        ),
        v.Moment(
            "moment-M_x",
            "whole",
            3,
            at=(0, 0),
            newton_metres=57.0,
            label=label("*{M|x} = 57 N·m", "bearing on hub", place="left column", tone="moment"),
        ),
        v.Moment(
            "moment-back",
            "plot",
            3,
            at=(100, -3500),
            newton_metres=-20.0,
            radius=6.0,
            role="applied",
            label=label("{M|A}", tone="moment"),
        ),
        v.Force(
            "oblique",
            "detail A",
            3,
            at=(-34, 0),
            vector=(1200, -1700),
            role="reaction",
            label=label("{R|in} = 2.08 kN", place="tail", tone="reaction"),
        ),
        v.Force(
            "resultant-R",
            "detail A",
            3,
            at=(34, 0),
            vector=(0, -3400),
            role="resultant",
            label=label("{R|out}", place="left", tone="load"),
        ),
        v.Force(
            "slight",
            "detail A",
            3,
            at=(-60, -30),
            vector=(-2, 0),
            to_scale=False,
            label=label("drag 2 N", "not to scale", place="below", tone="load"),
        ),
        v.AngularDimension(
            "dimension-contact",
            "detail A",
            4,
            vertex=(-34, 0),
            start=(-34, 40),
            end=(-60, 40),
            radius=22.0,
            extension=(False, True),
            label=label("{α} = 33°"),
        ),
        v.AngularDimension(
            "slim", "whole", 4, vertex=(12, -370), start=(12, 0), end=(-12, 0), radius=60.0, label=label("3.7°")
        ),
        v.LeaderDimension(
            "dimension-bore",
            "detail A",
            4,
            start=(20, -8),
            end=(20, 8),
            label=label("ø 16 mm", place="below"),
        ),
        v.LeaderDimension(
            "free radius",
            "whole",
            4,
            start=(12, 0),
            end=(12 + 370 * cos(1.2), 370 * sin(1.2)),
            measures="radius",
            label=label("{R} 370 mm", place="right"),
        ),
        v.LeaderDimension("small", "whole", 4, start=(40, 150), end=(28, 150), label=label("ø 12 mm", place="above")),
        v.Spring("spring", "plot", 1, start=(20, -2900), end=(20, -1500)),
        v.Damper("damper", "plot", 1, start=(60, -2900), end=(60, -1500)),
        v.Callout("callout-A", "whole", 1, at=(-60, 70), label=label("A")),
        v.Callout(
            "remark", "plot", 3, at=(130, -500), form="frame", label=label("here it", "is steepest", tone="load")
        ),
        v.Normal("drive", "detail A", 3, at=(30, 60), newtons=500, label=label("{F|x}", place="above", tone="load")),
        v.Normal(
            "reaction-drive",
            "detail A",
            3,
            at=(50, 60),
            newtons=-500,
            role="reaction",
            label=label("{B|x}", place="right", tone="reaction"),
        ),
        v.Dimension("dimension-offset", "detail A", 4, start=(42, 20), end=(12, 20), line_at=182, text="offset 30 mm"),
        v.Dimension(
            "dimension-e",
            "detail A",
            4,
            start=(12, 20),
            end=(0, 20),
            line_at=182,
            text="load line offset {e} = 12 mm",
            side="end",
        ),
        v.Dimension("spread", "detail A", 4, start=(33.7, 0), end=(-33.7, 0), line_at=47, text="spread {ℓ} = 67.4 mm"),
        v.Dimension(
            "radius",
            "whole",
            4,
            start=(-120, 0),
            end=(-120, -370),
            direction="vertical",
            line_at=128,
            text="loaded radius {R|l} = 370 mm",
            extension=(False, True),
        ),
        v.Support("pin", "plot", 1, at=(0, 3000), kind="pin"),
        v.Support("roller", "plot", 1, at=(60, 3000), kind="roller"),
        v.Support("wall", "plot", 1, at=(130, 3000), kind="fixed-right"),
        v.Support("wall-2", "plot", 1, at=(-30, 3000), kind="fixed-left"),
        v.Support("edges", "plot", 1, at=(95, 3000), kind="knife edges"),
        v.Curve(
            "shear", "plot", 3, points=((0, 0), (0, 800), (60, 800), (60, -500), (130, -500), (130, 0)), tone="load"
        ),
        v.Bar("bar", "plot", 3, start=0, end=-60, at=-2300, tone="load", label=label("nine", place="left")),
        v.Axis("axis-plot", "plot", 1, start=0, end=140, marks=((0, "0"), (70, ""), (140, "140")), at=-4000),
        v.Words(
            "words", "sheet", 5, at_sheet=(259, 42), lines=("*The rows share it", "{R|out} + {R|in} = {B|z}"), size=2.4
        ),
    )
    return v.Scene(
        name="every-item",
        title="Every item of the vocabulary on one sheet",
        caption="Rear view, cut through the axis, outboard to the left. The road pushes up with 5.49 kN near {C}.",
        description="A test sheet: a wheel, a hub, their loads and reactions.",
        units="si",
        size=(310, 205),
        views=(WHOLE, DETAIL, PLOT),
        items=items,
        steps=tuple(v.Step(f"Step {i}", "A sentence.") for i in range(1, 6)),
        columns=(v.Column("left", 54, 38, 195), v.Column("right", 259, 55, 180)),
        scale_bars=(
            v.ScaleBar("whole", "length", "Whole wheel 1 : 5"),
            v.ScaleBar("detail A", "length", "Detail 4 : 5"),
            v.ScaleBar("whole", "force", "Forces, both views"),
        ),
        key=(
            v.KeyEntry("load", "load"),
            v.KeyEntry("reaction", "reaction"),
            v.KeyEntry("reaction moment", "moment of a reaction"),
            v.KeyEntry("moment", "moment of a load"),
            v.KeyEntry("resultant", "resultant"),
            v.KeyEntry("load line", "load line"),
            v.KeyEntry("turning", "turns (free body)"),
            v.KeyEntry("fixed", "fixed to vehicle"),
        ),
        axes="rear",
        body=v.ClosedBody(
            forces=(
                ("F_z", (0, 0, 5490.0), (0, 0.012, -0.37)),
                ("W", (0, 0, -390.0), (0, 0.04, 0)),
                ("B", (0, 0, -5100.0), (0, 0, 0)),
            ),
            couples=(("M", (-(0.012 * 5490 - 0.04 * 390), 0, 0)),),
        ),
    )
