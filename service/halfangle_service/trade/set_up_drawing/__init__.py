"""The set-up at the machine, drawn to scale: plate, stacks block by block, work, wheel.

`set_up_svg` (`setting.py`) draws one view, or both tilts of a compound plate one under the other:

    plate = PlateOnStacks(5.0, math.radians(30.0), high=(2.0, 0.5), raised="right")
    work = ConeOnPlate(math.radians(30.0), 0.75, 0.05, name="60° center", mark="mark up")
    svg = set_up_svg([SetUpView(plate, work)], "in", title="Set-up", width=180.0, headed=False)
"""
