"""What dirt and a thin film of lubricant leave of a rolling bearing's life, by the classes of ISO 281.

Newtons, metres.
"""

from __future__ import annotations

import tomllib
from functools import cache
from importlib import resources

import numpy as np

from hubwright.errors import ImpossibleError
from hubwright.mechanics.bearing_rating import Elements
from hubwright.mechanics.constants import Value

# m, pitch diameter from which the table of classes has other bands, and above which C_u grows more slowly than C₀:
# ISO 281:2007, Table 13 and Annex B (from memory)
LARGE = 0.1
MOST = 50.0  # of the life modification factor: ISO 281:2007 (from memory)
# κ up to which each pair (c, q) holds: ISO 281:2007, equations 31 to 36 (rollers' c from memory)
_KAPPA = (0.1, 0.4, 1.0, 4.0)
_C = {"balls": (2.2649, 1.9987, 1.9987), "rollers": (1.3993, 1.2348, 1.2348)}
_Q = (0.054381, 0.19087, 0.071739)
_FIRST = {"balls": 2.5671, "rollers": 1.5859}
_INNER = {"balls": (0.83, 1 / 3), "rollers": (1.0, 0.4)}  # exponents of the lubrication and of the contamination term
OUTER = {"balls": 9.3, "rollers": 9.185}
_RATING_OVER_LIMIT = {"balls": 22.0, "rollers": 8.2}  # from memory
_SIZE_EXPONENT = {"balls": 0.5, "rollers": 0.3}  # from memory


def contamination_factors(*, contamination: str, pitch_diameter: Value) -> tuple[Value, Value]:
    """Return the band of the contamination factor of a class.

    From one for clean oil through fine filters down to nothing for dirt that one feels.

        e_C from low to high

    Parameters
    ----------
    contamination
        Class of the standard, "normal cleanliness".
    pitch_diameter
        D_pw [m].

    Returns
    -------
    tuple
        Lowest and highest e_C of the class [1].

    Raises
    ------
    ImpossibleError
        For a class that the standard has not.

    Notes
    -----
    A class is a judgement, so only the band means something.

    Examples
    --------
    >>> [float(end) for end in contamination_factors(contamination="slight contamination", pitch_diameter=0.062)]
    [0.3, 0.5]

    References
    ----------
    ISO 281:2007, Table 13 (from memory), in iso_281_contamination.toml.
    """
    found = _classes().get(contamination)
    if found is None:
        raise ImpossibleError(f"'{contamination}' is no contamination class of ISO 281")
    small, large = found
    low, high = (np.where(np.asarray(pitch_diameter) >= LARGE, large[end], small[end]) for end in (0, 1))
    return low, high


def fatigue_load_limit(*, static_rating: Value, pitch_diameter: Value, elements: Elements) -> Value:
    """Return the load below which a clean, well lubricated bearing would not fatigue.

    The standard's simple estimate from the static rating.

        C_u = C₀/22 (balls),   C₀/8.2 (rollers)
        above D_pw = 100 mm:   C₀/22·(100 mm/D_pw)^0.5,   C₀/8.2·(100 mm/D_pw)^0.3

    Parameters
    ----------
    static_rating
        C₀ [N].
    pitch_diameter
        D_pw [m].
    elements
        "balls" or "rollers".

    Returns
    -------
    Value
        C_u [N].

    Notes
    -----
    A simple rule; the standard also works the limit out from the contact pressure.

    Examples
    --------
    >>> [float(fatigue_load_limit(static_rating=22e3, pitch_diameter=D, elements="balls")) for D in (0.06, 0.4)]
    [1000.0, 500.0]

    References
    ----------
    ISO 281:2007, Annex B (from memory).
    """
    size = np.minimum(LARGE / np.asarray(pitch_diameter), 1.0) ** _SIZE_EXPONENT[elements]
    limit: Value = static_rating / _RATING_OVER_LIMIT[elements] * size
    return limit


def life_modification(
    *,
    contamination_factor: Value,
    fatigue_load_limit: Value,
    equivalent_load: Value,
    viscosity_ratio: Value,
    elements: Elements,
) -> Value:
    """Return the factor on the basic life for dirt and lubrication.

    The same bearing lasts a tenth or many times its basic life by what is in its grease.

        balls    a = 0.1 [1 − (2.5671 − c/κ^q)^0.83 (e_C C_u/P)^(1/3)]^(−9.3)
        rollers  a = 0.1 [1 − (1.5859 − c/κ^q) (e_C C_u/P)^0.4]^(−9.185)

    Parameters
    ----------
    contamination_factor
        e_C [1].
    fatigue_load_limit
        C_u, of the same bearing or row as P [N].
    equivalent_load
        P [N].
    viscosity_ratio
        κ; below 0.1 taken as 0.1, above 4 as 4 [1].
    elements
        "balls" or "rollers".

    Returns
    -------
    Value
        a_ISO, at most 50 [1].

    Notes
    -----
    For lubricants without the standard's bonus for additives.

    Examples
    --------
    >>> sizes = {"fatigue_load_limit": 500.0, "equivalent_load": 4000.0, "viscosity_ratio": 1.0, "elements": "balls"}
    >>> round(float(life_modification(contamination_factor=0.0, **sizes)), 6)  # dirt that one feels
    0.1

    References
    ----------
    ISO 281:2007, equations 31 to 36 (recalled, document not opened).
    """
    κ = np.clip(viscosity_ratio, _KAPPA[0], _KAPPA[-1])
    bands = [κ < limit for limit in _KAPPA[1:-1]]
    c, q = (np.select(bands, values[:-1], values[-1]) for values in (_C[elements], _Q))
    film, dirt = _INNER[elements]
    with np.errstate(divide="ignore"):
        share = (contamination_factor * fatigue_load_limit / np.asarray(equivalent_load)) ** dirt
    # at κ = 0.1 the two are one to the digits of the standard
    left = 1 - np.maximum(_FIRST[elements] - c / κ**q, 0.0) ** film * share
    # past zero the load lies under the limit: no fatigue, which the standard caps
    factor = 0.1 * np.maximum(left, 1e-3) ** -OUTER[elements]
    return np.asarray(np.minimum(factor, MOST))


@cache
def _classes() -> dict[str, tuple[tuple[float, float], tuple[float, float]]]:
    text = resources.files("hubwright.mechanics").joinpath("iso_281_contamination.toml").read_text(encoding="utf-8")
    return {
        line["name"]: ((line["small"][0], line["small"][1]), (line["large"][0], line["large"][1]))
        for line in tomllib.loads(text)["class"]
    }
