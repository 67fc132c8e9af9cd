"""The drawing kit: sheets in millimetres, lines and type as standards of drawing have them.

A drawing is a function of plain values that fills a `Sheet` and gives its SVG by `svg_of`:

    sheet = Sheet()                                 # 150 mm wide; Sheet(width=180.0) for another
    view = sheet.view((left, bottom, right, top), units, tallest=80.0)  # a round scale that fits
    sheet.polygon(view.all(corners), "work")        # outlines and tones, in order of painting
    dimension(sheet, a, b, "2.5", way=(0.0, 1.0))   # then dimensions: below, as y is down
    angle_dimension(sheet, vertex, 0.0, 30.0, "30°", radius=25.0)
    sheet.note("stack", view.at(place))             # then notes, which find their room themselves
    return svg_of(sheet, "Title", ["a line under it"], scale=Scale(view.scale_to(units), units))

Drawings are in the rooms of their subjects (`…/drawing.py`, `…_drawing.py`). Every style is on its
mark, so that a drawing looks the same within any page; `headed=False` leaves out title and lines
for a page that has them beside it. Without a `scale` it says that it is not to scale.
"""
