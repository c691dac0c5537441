"""Contrast of colours, by the measure of the accessibility guideline."""


def contrast(first: str, second: str) -> float:
    """Return the contrast ratio of two colours as WCAG 2.2 defines it, from 1 to 21."""
    bright, dim = sorted((_luminance(first), _luminance(second)), reverse=True)
    return (bright + 0.05) / (dim + 0.05)


def _luminance(colour: str) -> float:
    digits = colour[1:] if len(colour) == 7 else "".join(2 * digit for digit in colour[1:])
    channels = [int(digits[i : i + 2], 16) / 255 for i in (0, 2, 4)]
    # WCAG 2.2, relative luminance; 0.04045 is the corrected threshold of IEC 61966-2-1
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]
