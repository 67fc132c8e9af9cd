"""Columns: an operation's answers to many requests at once, arrays in and arrays out.

`columns_of(operation, fields)` runs the very function that answers one request, with a column in
place of each number (`trade/columns.py`), path by path, so nothing is written twice and every
number is that of the row's own answer to the last bit. Rows that are refused, or that no column can
say, are named in `left`: whoever asks has them answered by the row form.
"""

from halfangle_service.columns.asked import AskedColumns
from halfangle_service.columns.flat import (
    EMPTY_LIST,
    FlatField,
    flat_answer,
    flat_fields,
    joint_of,
    text_of,
)
from halfangle_service.columns.run import AnsweredColumns, columns_of
from halfangle_service.columns.words import BETWEEN_TEXTS, advised_in_words

__all__ = [
    "BETWEEN_TEXTS",
    "EMPTY_LIST",
    "AnsweredColumns",
    "AskedColumns",
    "FlatField",
    "advised_in_words",
    "columns_of",
    "flat_answer",
    "flat_fields",
    "joint_of",
    "text_of",
]
