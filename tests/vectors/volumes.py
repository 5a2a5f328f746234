"""What does plane geometry make of the shapes of a pool? By thin slices, apart from the closed formulas."""

import math

FOOT, GALLON = 0.3048, 0.003785411784
HEAD = "outline,floor,unit,measures,depths,floor_parts,wing,ledge,steps,spa,gal,m3".split(",")
SLICES = 200_000


def volumes(_):
    """Edges by slices across the length, hoppers by slices of depth; the kidney by its rule."""

    def across(outline, m):
        """Length, and the width at a place; an area per metre for the kidney's rule."""
        if outline == "rectangle":
            return m[0], lambda x: m[1]
        if outline == "kidney":
            return m[0], lambda x: 0.45 * (m[1] + m[2])
        if outline == "round":
            return m[0], lambda x: 2 * math.sqrt(x * (m[0] - x))
        if outline == "ellipse":
            return m[0], lambda x: 2 * m[1] / m[0] * math.sqrt(x * (m[0] - x))
        end = lambda x: min(x, m[0] - x, m[1] / 2)
        return m[0], lambda x: 2 * math.sqrt(end(x) * (m[1] - end(x)))

    def profile(floor, depths, parts, length):
        if floor == "level":
            return lambda x: depths[0]
        flat, slope = parts if floor == "break" else (0, length)
        return lambda x: depths[0] + (depths[1] - depths[0]) * min(max((x - flat) / slope, 0), 1)

    def middles(length):
        """Slices thin at both ends, as middle and thickness."""
        edges = [length * (1 - math.cos(math.pi * i / SLICES)) / 2 for i in range(SLICES + 1)]
        return [((a + b) / 2, b - a) for a, b in zip(edges, edges[1:])]

    def walls(outline, floor, m, depths, parts):
        if outline in ("trapezoid", "simpson"):
            gap, *w = m
            pairs = [(a + b) / 2 for a, b in zip(w, w[1:])]
            if outline == "simpson":  # The parabola through each three: mean of its ends, its middle four times.
                pairs = [(a + 4 * b + c) / 3 for a, b, c in zip(w[::2], w[1::2], w[2::2])]
            return gap * sum(pairs) * depths[0]
        if floor == "hopper":
            flat, a, b = parts
            top, wide, high = m[0] - flat, m[1], depths[1] - depths[0]
            layers = [(i + 0.5) / SLICES for i in range(SLICES)]
            below = sum((top + (a - top) * t) * (wide + (b - wide) * t) for t in layers) * high / SLICES
            return m[0] * m[1] * depths[0] + below
        length, width = across(outline, m)
        depth = profile(floor, depths, parts, length)
        return math.fsum(width(x) * depth(x) * dx for x, dx in middles(length))

    feet = [
        ("rectangle", "slope", (30, 15), (3.5, 6.5)),
        ("rectangle", "slope", (30, 15), (3.5, 6.5), (), (), (), (6, 1, 2.625, 1.75, 0.875)),
        ("round", "level", (24,), (4,)),
        ("ellipse", "level", (34, 18), (5,)),
        ("stadium", "level", (34, 18), (5,)),
        ("kidney", "level", (32, 14, 18), (5,)),
        ("trapezoid", "level", (4, 0, 10, 14, 15, 13, 12, 14, 11, 0), (5,)),
        ("simpson", "level", (4, 0, 10, 14, 15, 13, 12, 14, 11, 0), (5,)),
        ("rectangle", "level", (30, 15), (5,), (), (12, 10, 3.5)),
        ("rectangle", "slope", (32, 16), (3.5, 8)),
        ("rectangle", "break", (32, 16), (3.5, 8), (12, 10)),
        ("rectangle", "hopper", (32, 16), (3.5, 8), (12, 6, 8)),
        ("ellipse", "break", (34, 18), (3.5, 8), (12, 10)),
        ("stadium", "break", (34, 18), (3.5, 8), (12, 10)),
        ("round", "break", (24,), (3.5, 6), (8, 6)),
        ("rectangle", "slope", (30, 15), (3.5, 6.5), (), (), (90, 0.75, 3.5)),
        ("rectangle", "slope", (30, 15), (3.5, 6.5), (), (), (), (), math.pi / 4 * 7**2 * 3),
    ]
    rows = []
    for unit, size, cases in (("[ft_i]", FOOT, feet), ("m", 1, [("rectangle", "slope", (8, 4), (1.0, 1.9))])):
        for case in cases:
            outline, floor, m, depths, parts, wing, ledge, steps, spa = case + ((), (), (), (), 0)[len(case) - 4 :]
            v = walls(outline, floor, m, depths, parts) + spa
            v += math.prod(wing) if wing else 0
            v -= ledge[0] * (ledge[2] - ledge[1]) if ledge else 0
            v -= steps[0] * steps[1] * sum(steps[2:]) if steps else 0
            v *= size**3
            cells = [" ".join(f"{x:g}" for x in part) for part in (m, depths, parts, wing, ledge, steps)]
            rows.append([outline, floor, unit, *cells, f"{spa:.10g}", f"{v / GALLON:.0f}", f"{v:.2f}"])
    return "arithmetic, by slices; US gallon of 231 cubic inches and foot of 0.3048 m exactly (NIST Handbook 44, appendix C)", HEAD, rows
