"""The lines of a sheet as plain data: views of entities, in millimetres of the sheet, y upwards."""

from collections import OrderedDict

from .entities import Arc, Circle, Dimension, Fill, Hatch, Line, Polyline, Text

_NAMES = (
    (Line, "line"),
    (Circle, "circle"),
    (Arc, "arc"),
    (Polyline, "polyline"),
    (Hatch, "hatch"),
    (Fill, "fill"),
    (Text, "text"),
    (Dimension, "dimension"),
)


def entity_list(sheet):
    """A list of views, each with its name, scale, origin and entities."""
    return [
        OrderedDict(
            (
                ("view", view.name),
                ("title", view.title),
                ("scale", view.scale),
                ("x", view.x),
                ("y", view.y),
                ("entities", [_entity(entity) for entity in view.entities]),
            )
        )
        for view in sheet.views
    ]


def _entity(entity):
    kind = type(entity)
    row = OrderedDict((("kind", [name for known, name in _NAMES if known is kind][0]),))
    if kind is Dimension:
        row["figure"] = entity.name
        # Not under "value" and "unit": drawings stay in mm when the figures come back in inches.
        row["measures"] = entity.value
        row["measured_in"] = entity.unit
        row["way"] = entity.kind
        row["points"] = [list(point) for point in entity.points]
        row["words"] = _words(entity.words)
        row["entities"] = [_entity(part) for part in entity.parts]
        return row
    row["layer"] = entity.layer
    if kind is Line:
        row["from"] = [entity.x1, entity.y1]
        row["to"] = [entity.x2, entity.y2]
    elif kind is Hatch:
        row["loops"] = [[list(point) for point in loop] for loop in entity.loops]
        row["angle"] = entity.angle
        row["spacing"] = entity.spacing
    elif kind in (Polyline, Fill):
        row["points"] = [list(point) for point in entity.points]
        if kind is Polyline:
            row["closed"] = entity.closed
    else:
        row["at"] = [entity.x, entity.y]
        if kind is Text:
            row["text"] = entity.text
            row["size"] = entity.size
            row["align"] = entity.align
            row["turn"] = entity.turn
        else:
            row["radius"] = entity.radius
            if kind is Arc:
                row["start"] = entity.start
                row["end"] = entity.end
    return row


def _words(words):
    if type(words) is tuple:
        return list(words)
    return [words.prefix + line for line in words.lines]
