"""Prints, as one JSON list, what ezdxf makes of DXF files: what its auditor found and fixed, how many entities of each
kind are on each layer, the net area of the cut layer (whose name holds CUT) in file units, and its circles as [x, y, diameter].

Usage: dxf_audit.py FILE...

Contours are joined here from their pieces by nearest end, with arcs flattened to a sagitta of 1e-8; nothing of the project
takes part.
"""

import json
import math
import sys

import ezdxf

SAGITTA = 1e-8


def pieces(entity):
    """The points of each line and arc of an entity, in drawing order of the piece itself."""
    kind = entity.dxftype()
    if kind == "LWPOLYLINE":
        for part in entity.virtual_entities():
            yield from pieces(part)
    elif kind == "LINE":
        yield [(entity.dxf.start.x, entity.dxf.start.y), (entity.dxf.end.x, entity.dxf.end.y)]
    elif kind == "ARC":
        yield [(p.x, p.y) for p in entity.flattening(SAGITTA)]
    elif kind != "CIRCLE":
        raise SystemExit(f"{kind} on the cut layer")


def contours(parts):
    """Joins pieces to closed rings, each next one by its nearest end."""
    parts = list(parts)
    while parts:
        ring = list(parts.pop(0))
        while parts and math.dist(ring[0], ring[-1]) > 1e-5:
            ends = [(math.dist(ring[-1], p[k]), i, k) for i, p in enumerate(parts) for k in (0, -1)]
            gap, i, k = min(ends)
            if gap > 1e-5:
                raise SystemExit(f"gap of {gap}")
            nxt = parts.pop(i)
            ring += nxt[1:] if k == 0 else nxt[-2::-1]
        yield ring


def area(ring):
    return abs(math.fsum(a[0] * b[1] - b[0] * a[1] for a, b in zip(ring, ring[1:] + ring[:1]))) / 2


def report(path):
    doc = ezdxf.readfile(path)
    auditor = doc.audit()
    layers, rings, circles = {}, [], []
    for entity in doc.modelspace():
        on = layers.setdefault(entity.dxf.layer, {})
        on[entity.dxftype()] = on.get(entity.dxftype(), 0) + 1
    cut = [entity for entity in doc.modelspace() if "CUT" in entity.dxf.layer]
    for entity in cut:
        if entity.dxftype() == "CIRCLE":
            circles.append([entity.dxf.center.x, entity.dxf.center.y, 2 * entity.dxf.radius])
    rings = [area(r) for r in contours(p for e in cut for p in pieces(e))]
    rings += [math.pi / 4 * d * d for _, _, d in circles]
    return {
        "version": doc.dxfversion,
        "units": doc.header.get("$INSUNITS", 0) if doc.dxfversion != "AC1009" else 0,
        "errors": len(auditor.errors),
        "fixes": len(auditor.fixes),
        "layers": layers,
        "area": 2 * max(rings) - math.fsum(rings),
        "circles": circles,
    }


print(json.dumps([report(path) for path in sys.argv[1:]]))
