"""Answers as people and tables read them: as lines, as HTML, as flat records.

All work on JSON data, an answer as it came: `{"result": …, "advisories": […], "basis": …}`.
"""
