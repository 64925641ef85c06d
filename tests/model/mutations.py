"""Mistakes that a team may make on a finished design: each a name and a changed, valid design."""

from collections.abc import Iterator
from functools import partial
from typing import Any

from pydantic import ValidationError

from model.coach.remedies.frame import without_bars
from model.design import Ballast, Design
from model.survey import survey

PLANES = ("stations", "sides", "levels")
Mutation = tuple[str, Design]


def mutations(design: Design) -> Iterator[Mutation]:
    """All of them, in an order that does not change."""
    for make in (_frame, _fittings, _thrusters, _floats, _weights, _gear, _holes, _rules):
        for name, change in make(design):
            try:
                yield name, change()
            except ValidationError:
                continue


def _frame(design: Design) -> Iterator[tuple[str, Any]]:
    for bar in design.arrangement.bars:
        yield f"without {bar.name}", partial(without_bars, design, {bar.id})
    for group in PLANES:
        for plane in getattr(design.arrangement, group):
            for by in (-0.08, -0.02, 0.02, 0.08):
                yield (
                    f"{plane.name} moved {by * 1000:+.0f} mm",
                    partial(_plane_moved, design, group, plane.id, by),
                )
        yield f"{group} 10 % further apart", partial(_stretched, design, group, 1.1)
        yield f"{group} at half the distance", partial(_stretched, design, group, 0.5)


def _fittings(design: Design) -> Iterator[tuple[str, Any]]:
    used = {j.match.fitting.id for j in survey(design).frame.joints.values() if j.match}
    for joint in design.arrangement.joints[:4]:
        for fitting in design.stock.fittings:
            yield f"{fitting.name} at {joint.name}", partial(_picked, design, joint.id, fitting.id)
    for gone in sorted(used):
        left = tuple(f for f in design.stock.fittings if f.id != gone)
        picks = tuple(j.but(fitting=None) if j.fitting == gone else j for j in design.arrangement.joints)
        stock = design.stock.but(fittings=left)
        yield (
            f"no {gone} in stock",
            lambda stock=stock, picks=picks: design.arranged(joints=picks).but(stock=stock),
        )


def _thrusters(design: Design) -> Iterator[tuple[str, Any]]:
    for item in design.arrangement.thrusters:
        yield f"{item.name} without mount", partial(_item, design, "thrusters", item.id, mount=None)
        yield f"without {item.name}", partial(_dropped, design, "thrusters", item.id)
        yield f"{item.name} upright", partial(_item, design, "thrusters", item.id, to="+z")
        far = tuple(step + 0.06 for step in item.offset)
        yield f"{item.name} 60 mm off", partial(_item, design, "thrusters", item.id, offset=far)
    yield "without thrusters", partial(design.arranged, thrusters=())


def _floats(design: Design) -> Iterator[tuple[str, Any]]:
    for piece in design.arrangement.floats:
        change = partial(_item, design, "floats", piece.id)
        yield f"without {piece.name}", partial(_dropped, design, "floats", piece.id)
        yield f"{piece.name} twice as long", partial(change, length=2 * piece.length)
        yield f"{piece.name} half as long", partial(change, length=piece.length / 2)
        yield f"{piece.name} slid to the end", partial(change, at=0.98)
        yield f"{piece.name} slid a little", partial(change, at=min(1.0, piece.at + 0.1))
    low = _lowest_bar(design)
    sunk = tuple(piece.but(bar=low) for piece in design.arrangement.floats)
    yield "all floats on a low bar", partial(design.arranged, floats=sunk)
    yield "without floats", partial(design.arranged, floats=())


def _weights(design: Design) -> Iterator[tuple[str, Any]]:
    for bar in design.arrangement.bars[::4]:
        for mass in (0.05, 0.3):
            new = Ballast(id="extra", name="extra weight", bar=bar.id, mass=mass)
            ballasts = (*design.arrangement.ballasts, new)
            yield f"{mass * 1000:.0f} g on {bar.name}", partial(design.arranged, ballasts=ballasts)
    for piece in design.arrangement.ballasts:
        yield f"without {piece.name}", partial(_dropped, design, "ballasts", piece.id)


def _gear(design: Design) -> Iterator[tuple[str, Any]]:
    for item in design.arrangement.attachments:
        far = (item.offset[0] + 0.05, *item.offset[1:])
        yield f"{item.name} 50 mm ahead", partial(_item, design, "attachments", item.id, offset=far)
        yield f"without {item.name}", partial(_dropped, design, "attachments", item.id)


def _holes(design: Design) -> Iterator[tuple[str, Any]]:
    for item in design.arrangement.openings:
        yield f"without {item.name}", partial(_dropped, design, "openings", item.id)
    for item in design.arrangement.openings[:2]:
        yield f"{item.name} of 4 mm", partial(_item, design, "openings", item.id, diameter=0.004)
        yield f"{item.name} of 40 mm", partial(_item, design, "openings", item.id, diameter=0.04)
    yield "without openings", partial(design.arranged, openings=())
    yield "sealed", partial(design.arranged, bores="sealed")
    yield "sealed without openings", partial(design.arranged, bores="sealed", openings=())


def _rules(design: Design) -> Iterator[tuple[str, Any]]:
    found = survey(design)
    for axis in range(3):
        for share in (0.98, 0.9):
            limit = tuple(size * (share if k == axis else 1.2) for k, size in enumerate(found.extents.size))
            yield f"{'xyz'[axis]} limit at {share:.0%}", partial(_ruled, design, size_limit=limit)
    yield "spending limit 5 % lower", partial(_ruled, design, spending_limit=0.95 * found.bill.spent)
    yield "another material", partial(_ruled, design, materials=("glass",))
    yield "every move", partial(_ruled, design, moves=("ahead", "astern", "up", "down", "turn", "sideways"))
    yield "salt water", partial(_ruled, design, water=design.brief.water.but(salinity=35.0))


def _plane_moved(design: Design, group: str, plane: str, by: float) -> Design:
    planes = tuple(p.but(at=p.at + by) if p.id == plane else p for p in getattr(design.arrangement, group))
    return design.arranged(**{group: planes})


def _stretched(design: Design, group: str, factor: float) -> Design:
    return design.arranged(
        **{group: tuple(p.but(at=p.at * factor) for p in getattr(design.arrangement, group))}
    )


def _picked(design: Design, joint: str, fitting: str) -> Design:
    joints = tuple(j.but(fitting=fitting) if j.id == joint else j for j in design.arrangement.joints)
    return design.arranged(joints=joints)


def _item(design: Design, group: str, identity: str, **changes: Any) -> Design:
    items = getattr(design.arrangement, group)
    return design.arranged(**{group: tuple(i.but(**changes) if i.id == identity else i for i in items)})


def _dropped(design: Design, group: str, identity: str) -> Design:
    items = getattr(design.arrangement, group)
    return design.arranged(**{group: tuple(item for item in items if item.id != identity)})


def _ruled(design: Design, **rules: Any) -> Design:
    return design.but(brief=design.brief.but(**rules))


def _lowest_bar(design: Design) -> str:
    bars = survey(design).frame.bars.values()
    return min(bars, key=lambda bar: (bar.point(0.5)[2], -abs(bar.along[0]))).id
