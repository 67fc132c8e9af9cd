"""Which number formats of a workbook show dates, times or percentages."""

import re

#: Numbers of the formats that ECMA-376 (18.8.30) fixes, of Asian languages too.
_DATES = frozenset((*range(14, 23), *range(27, 37), *range(45, 48), *range(50, 59)))
_PERCENTS = frozenset((9, 10))
_NOT_SHOWN = re.compile(r'"[^"]*"|\\.|_.|\*.|\[(?!h+\]|m+\]|s+\])[^\]]*\]', re.IGNORECASE)
_GENERAL = re.compile(r"general|standard", re.IGNORECASE)

DATE, PERCENT, PLAIN = "date", "percent", ""


def format_kind(number: int, code: str | None) -> str:
    """What a format shows, by its number and, where it is the workbook's own, its code.

    >>> format_kind(14, None), format_kind(10, None), format_kind(0, None)
    ('date', 'percent', '')
    >>> format_kind(164, '[h]:mm'), format_kind(165, '0.000" mm"'), format_kind(166, '[Red]0.0%')
    ('date', '', 'percent')
    """
    if code is None:
        return DATE if number in _DATES else PERCENT if number in _PERCENTS else PLAIN
    # The first section is that of positive numbers.
    shown = _GENERAL.sub("", _NOT_SHOWN.sub("", code.partition(";")[0]))
    if "%" in shown:
        return PERCENT
    return DATE if re.search(r"[ymdhs]", shown, re.IGNORECASE) else PLAIN
