"""Fills and calculates a sheet in LibreOffice Calc, for a test or a measurement that asks.

A program of its own: it runs under the Python that has UNO (`/usr/bin/python3`), reads on standard
input what is wanted,

    {"locale": "de-DE", "cells": {"A1": 8.3, "A2": "8°18'"}, "typed": {"B1": "=…"}, "rows": 50,
     "read": ["B1"], "changed": {"A1": 0.001}}

and prints each cell that is read, with those below it, as [error, value, text], and seconds. Cells
are typed as a person types them in that locale, and what is typed is pulled down over the rows;
`changed` adds to the cells of a column, and the sheet is calculated again.
"""

import json
import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Any

_PROFILE = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Setup/L10N"><prop oor:name="ooSetupSystemLocale" oor:op="fuse">
<value>{locale}</value></prop></item>
</oor:items>
"""
_START_SECONDS = 60.0


@contextmanager
def office(locale: str) -> Iterator[Any]:
    """The desktop of a running office of this locale, with a profile of its own."""
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as folder:
        user = Path(folder, "user")
        user.mkdir()
        settings = _PROFILE.format(locale=locale)
        Path(user, "registrymodifications.xcu").write_text(settings, "utf-8")
        pipe = f"calc{os.getpid()}"
        profile = f"-env:UserInstallation=file://{folder}"
        listening = f"--accept=pipe,name={pipe};urp;"
        process = subprocess.Popen(
            ["soffice", profile, "--headless", "--norestore", "--nologo", listening],
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        try:
            desktop = _desktop(pipe, process)
            yield desktop
            with suppress(Exception):  # the bridge breaks off as the office ends
                desktop.terminate()
            process.wait(_START_SECONDS)
        finally:
            process.kill()
            process.wait()


def _desktop(pipe: str, process: subprocess.Popen[bytes]) -> Any:
    """The office's desktop, as soon as it listens."""
    import uno  # type: ignore[import-not-found]  # noqa: PLC0415 -- of another Python

    here = uno.getComponentContext()
    resolver = _service(here, "com.sun.star.bridge.UnoUrlResolver")
    until = time.monotonic() + _START_SECONDS
    while True:
        try:
            there = resolver.resolve(f"uno:pipe,name={pipe};urp;StarOffice.ComponentContext")
            return _service(there, "com.sun.star.frame.Desktop")
        except Exception:
            # Not there yet, or not to come.
            if time.monotonic() > until or process.poll() is not None:
                raise
            time.sleep(0.1)


def _service(context: Any, name: str) -> Any:
    return context.ServiceManager.createInstanceWithContext(name, context)


def calculated(desktop: Any, wanted: Mapping[str, Any]) -> dict[str, Any]:
    """Fill a new sheet, pull down what is typed, change what is wanted; give what cells show."""
    document = desktop.loadComponentFromURL("private:factory/scalc", "_blank", 0, (_hidden(),))
    sheet = document.Sheets.getByIndex(0)
    for name, value in wanted["cells"].items():
        cell = sheet.getCellRangeByName(name)
        if isinstance(value, str):
            cell.String = value
        else:
            cell.Value = value
    rows: int = wanted["rows"]
    seconds = {"first": _timed(lambda: _type(sheet, wanted["typed"], rows))}
    for name, by in wanted.get("changed", {}).items():
        document.enableAutomaticCalculation(False)
        changed = _below(sheet, name, rows)
        changed.setDataArray([[value + by] for (value,) in changed.getDataArray()])
        seconds["changed"] = _timed(document.calculate)
        seconds["unchanged"] = _timed(document.calculateAll)
    shown = {
        name: [
            [cell.getError(), cell.Value, cell.String]
            for cell in (_below(sheet, name, rows).getCellByPosition(0, k) for k in range(rows))
        ]
        for name in wanted["read"]
    }
    document.close(True)
    return {"cells": shown, "seconds": seconds}


def _hidden() -> Any:
    from com.sun.star.beans import (  # type: ignore[import-not-found]  # noqa: PLC0415 -- as above
        PropertyValue,
    )

    hidden = PropertyValue()
    hidden.Name, hidden.Value = "Hidden", True
    return hidden


def _type(sheet: Any, formulas: Mapping[str, str], rows: int) -> None:
    """Type formulas as a person does, and pull each down."""
    from com.sun.star.sheet.FillDirection import (  # type: ignore[import-not-found]  # noqa: PLC0415
        TO_BOTTOM,
    )

    for name, formula in formulas.items():
        sheet.getCellRangeByName(name).FormulaLocal = formula
        if rows > 1:
            _below(sheet, name, rows).fillAuto(TO_BOTTOM, 1)


def _timed(work: Callable[[], object]) -> float:
    """Seconds that work takes."""
    began = time.monotonic()
    work()
    return time.monotonic() - began


def _below(sheet: Any, name: str, rows: int) -> Any:
    """A cell and those below it."""
    first = sheet.getCellRangeByName(name).CellAddress
    last = first.Row + rows - 1
    return sheet.getCellRangeByPosition(first.Column, first.Row, first.Column, last)


if __name__ == "__main__":
    asked = json.load(sys.stdin)
    with office(asked["locale"]) as running:
        json.dump(calculated(running, asked), sys.stdout)
