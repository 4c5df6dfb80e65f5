"""Prints, as one JSON object, the median seconds in which ezdxf writes the entities of a DXF file to memory: with its document
API and with its streaming R12 writer. The entities are read from the file, once, before the clock starts.

Usage: dxf_speed.py FILE ROUNDS
"""

import io
import json
import math
import statistics
import sys
import time

import ezdxf
from ezdxf.addons import r12writer


def entities(path):
    doc = ezdxf.readfile(path)
    out = []
    for e in doc.modelspace():
        kind = e.dxftype()
        if kind == "LWPOLYLINE":
            out.append((kind, e.dxf.layer, list(e.get_points("xyb")), e.closed))
        elif kind == "CIRCLE":
            out.append((kind, e.dxf.layer, e.dxf.center, e.dxf.radius))
        elif kind == "LINE":
            out.append((kind, e.dxf.layer, e.dxf.start, e.dxf.end))
        else:
            raise SystemExit(f"{kind} is not expected")
    return out


def document(list_):
    doc = ezdxf.new("R2000")
    space = doc.modelspace()
    for layer in sorted({e[1] for e in list_}):
        doc.layers.add(layer)
    for kind, layer, a, b in list_:
        if kind == "LWPOLYLINE":
            space.add_lwpolyline(a, format="xyb", close=b, dxfattribs={"layer": layer})
        elif kind == "CIRCLE":
            space.add_circle(a, b, dxfattribs={"layer": layer})
        else:
            space.add_line(a, b, dxfattribs={"layer": layer})
    doc.write(io.StringIO())


def streaming(list_):
    with r12writer(io.StringIO()) as out:
        for kind, layer, a, b in list_:
            if kind == "LWPOLYLINE":
                for p, q in zip(a, a[1:] + a[:1] if b else a[1:]):
                    if p[2] == 0:
                        out.add_line(p[:2], q[:2], layer=layer)
                    else:
                        center, start, end, radius = ezdxf.math.bulge_to_arc(p[:2], q[:2], p[2])
                        out.add_arc(center, radius, math.degrees(start), math.degrees(end), layer=layer)
            elif kind == "CIRCLE":
                out.add_circle((a.x, a.y), b, layer=layer)
            else:
                out.add_line((a.x, a.y), (b.x, b.y), layer=layer)


def median(write, list_, rounds):
    write(list_)
    times = []
    for _ in range(rounds):
        began = time.perf_counter()
        write(list_)
        times.append(time.perf_counter() - began)
    return statistics.median(times)


def main():
    list_, rounds = entities(sys.argv[1]), int(sys.argv[2])
    print(json.dumps({"document": median(document, list_, rounds), "streaming": median(streaming, list_, rounds)}))


main()
