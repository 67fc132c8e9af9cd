"""One spelling for what keyboards, drawings and word processors write in many."""

import re

from halfangle_service.errors import Disagreement

_FRACTIONS = {
    "¼": "1/4",
    "½": "1/2",
    "¾": "3/4",
    "⅐": "1/7",
    "⅑": "1/9",
    "⅒": "1/10",
    "⅓": "1/3",
    "⅔": "2/3",
    "⅕": "1/5",
    "⅖": "2/5",
    "⅗": "3/5",
    "⅘": "4/5",
    "⅙": "1/6",
    "⅚": "5/6",
    "⅛": "1/8",
    "⅜": "3/8",
    "⅝": "5/8",
    "⅞": "7/8",
}
_SIGNS = str.maketrans(
    {
        **dict.fromkeys("º˚⁰", "°"),
        **dict.fromkeys("′’‘´`", "'"),
        **dict.fromkeys("″”“˝", '"'),
        **dict.fromkeys("–—−‐‑", "-"),
        **dict.fromkeys("×✕*", "x"),
        **dict.fromkeys("∶：", ":"),
        **dict.fromkeys("⁄∕", "/"),
        **dict.fromkeys("⌀∅ø", "Ø"),
        **dict.fromkeys("∠∡", " "),
        "⌲": " taper ",
        **{sign: f" {text}" for sign, text in _FRACTIONS.items()},
    }
)
_WORDS = (
    (re.compile(r"\+ ?/? ?-"), "±"),
    (re.compile(r"''"), '"'),
    (re.compile(r"(?<=[0-9.]) ?(?:degrees|degree|deg)\b\.?", re.IGNORECASE), "°"),
    (re.compile(r"(?<=[0-9.]) ?(?:minutes|minute|min)\b\.?", re.IGNORECASE), "'"),
    (re.compile(r"(?<=[0-9.]) ?(?:seconds|second|sec)\b\.?", re.IGNORECASE), '"'),
    (re.compile(r"(?<=[0-9.]) +(?=[°'\"])"), ""),
    (re.compile(r"\s+"), " "),
)
_DECIMAL_COMMA = re.compile(r"[0-9],[0-9]")


def cleaned(text: str) -> str:
    r"""The text in one spelling of signs, fractions and spaces; raises Disagreement at a comma.

    >>> cleaned("60º ∠"), cleaned("1½ per foot"), cleaned("8 deg 17 min 50 sec")
    ('60°', '1 1/2 per foot', '8° 17\' 50"')
    """
    text = text.translate(_SIGNS)
    for pattern, spelled in _WORDS:
        text = pattern.sub(spelled, text)
    text = text.strip()
    if _DECIMAL_COMMA.search(text):
        raise Disagreement(
            "A comma stands between two figures.",
            fields={"text": "should have a decimal point, not a comma: 0.5, not 0,5"},
        )
    return text
