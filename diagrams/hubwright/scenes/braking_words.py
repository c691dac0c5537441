"""The words of braking or driving seen from above, all from the numbers."""

import math
from dataclasses import dataclass

from hubwright.scenes.three_views_words import ViewsWording, listed
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import Step
from hubwright.scenes.wheel_end_actions import Action, Actions
from hubwright.scenes.wheel_end_words import rows_of

UPRIGHT = 0.02  # sine of the angle off upright below which a caliper stands above or below the axle


@dataclass(frozen=True)
class BrakingWording(ViewsWording):
    """Numbers of one case along the road, as words."""

    @property
    def act(self) -> str:
        """Return what the vehicle does."""
        return "Braking" if self.state.kind == "braking" else "Driving"

    def braking_title(self, actions: Actions) -> str:
        """Return what the force along the road does to the bearing."""
        B, F = actions.bearing.force, actions.contact.force
        if self.nothing(F.x):
            spared = "braked" if self.state.kind == "braking" else "driven"
            return f"{self.act} does nothing along the road here: this wheel is not {spared}"
        held = f"{self.force(B.x)} fore and aft"
        if actions.caliper is None:
            return f"{self.act} makes the bearing hold {held}, beside {self.force(B.z)} upright"
        K = actions.caliper.force
        if self.nothing(K.z):
            return f"{self.act} makes the bearing hold {held}; the caliper adds nothing upright"
        caliper, load = f"The caliper {self.place(actions.caliper)}", "the bearing's upright load"
        if K.z > 0:
            does = f"adds {self.force(K.z)} to {load}"
        elif B.z <= 0:
            does = f"takes {self.force(K.z)} off {load}"
        else:  # more than there is to take off
            does = f"turns {load} round, to {self.force(B.z)}"
        return f"{caliper} {does}; the bearing holds {held}"

    def place(self, caliper: Action) -> str:
        """Return where the caliper stands."""
        x, z = caliper.point.x, caliper.point.z
        if abs(x) < UPRIGHT * math.hypot(x, z):
            return "above the axle" if z > 0 else "below the axle"
        return "ahead of the axle" if x > 0 else "behind the axle"

    def braking_caption(self, actions: Actions) -> str:
        """Return what is drawn and what holds the wheel about its axis."""
        M = actions.bearing.couple
        side = "left" if self.results.side > 0 else "right"
        sentences = [
            f"{self.wheel.capitalize()} from above, forward upward, outboard to the {side}; {plain(self.state.name)}.",
            self._contact_sentence(),
        ]
        if not self.little(M.z):
            sentences.append(f"About the upright axis the bearing turns the hub back with {self.moment(M.z)}.")
        if actions.caliper is not None:
            sentences.append(
                "About the wheel's axis the caliper holds what the force along the road turns: the bearing nothing."
            )
        elif actions.shaft is not None:
            told = self.moment(actions.shaft.couple.y)
            does = "shaft drives the hub with"
            if self.state.kind == "braking":
                does = "brake, whose place is not given, takes"
            sentences.append(f"The {does} {told} about the wheel's axis.")
        sentences.append("A dot in a ring points at you, a cross away.")
        return " ".join(sentences)

    def braking_description(self, actions: Actions) -> str:
        """Return the text alternative."""
        rows = ""
        if self.state.row_load is not None:
            parts = (
                f"the {name} row pushes the hub {self.fore_and_aft(-row.x)} with {along} and "
                f"{self.upright(-row.z)} with {upright}"
                for name, row, along, upright in zip(
                    ("outboard", "inboard"),
                    rows_of(self.state.row_load),
                    self.row_forces("x"),
                    self.row_forces("z"),
                    strict=True,
                )
            )
            said = " and ".join(parts)
            rows = f" {said[0].upper()}{said[1:]}."
        return (
            f"Wheel end seen from above, its rows, and the wheel from outboard. {self.braking_caption(actions)}{rows}"
        )

    def braking_steps(self, actions: Actions) -> tuple[Step, ...]:
        """Return the moves in teaching order."""
        F, B, M = actions.contact.force, actions.bearing.force, actions.bearing.couple
        lever = f"The load line lies {self.load_line}"
        if self.nothing(F.x):
            turns = "no force along the road acts there"
        elif self.in_plane:
            turns = "there the force along the road has no lever about the upright axis"
        else:
            turns = "there the force along the road turns the hub about the upright axis"
        held = "Weight and inertia of the turning parts."
        if actions.caliper is not None:
            pushes = listed(self.directed(actions.caliper.force))
            held = f"The caliper {self.place(actions.caliper)} pushes the disc {pushes}; and weight and inertia."
        answer = "" if self.little(M.z) else f", with {self.moment(M.z)} about the upright axis"
        rows = self.state.row_load
        solved = (
            "Where the rows bear is not known here."
            if rows is None
            else "Along the road the outboard row holds {}, the inboard one {}.".format(*self.row_forces("x"))
        )
        return (
            Step(
                "Look from above",
                "The turning parts, cut along the axis; forward is up, and upward comes at you.",
                "isolate",
            ),
            Step(
                "Put on the contact force",
                f"The road pushes the tire {listed(self.directed(F))}.",
                "loads",
            ),
            Step("Add caliper and masses" if actions.caliper else "Add the masses", held, "loads"),
            Step(
                "Put the bearing's answer at C",
                f"On the hub it is {listed(self.directed(B))}{answer}.",
                "reactions",
            ),
            Step("Measure the levers", f"{lever}: {turns}.", "dimensions"),
            Step("Solve for the rows", solved, "solve"),
        )
