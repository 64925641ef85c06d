"""The air in pipes by brute force: bores cut into small cubes, from raw numbers.

A cube's air can leave down to the lowest cube on the best way out; the best ways are those of a maximum
spanning tree over the cubes (widest paths: Hu, Operations Research 9, 1961, from memory), found by
scipy.  Lengths in mm.
"""

from itertools import product

import numpy as np
from scipy.sparse import coo_array
from scipy.sparse.csgraph import breadth_first_order, connected_components, minimum_spanning_tree

STEPS = [step for step in product((-1, 0, 1), repeat=3) if step > (0, 0, 0) and sum(map(abs, step)) <= 2]
"""Half of the 18 neighbours of a cube that share a face or an edge with it."""


class Voxels:
    """Rooms, walls inside them, and mouths, cut into cubes of one size [mm]."""

    def __init__(self, rooms, size, walls=()):
        ends = np.array([point for start, end, _ in rooms for point in (start, end)])
        margin = max(radius for _, _, radius in rooms) + 2 * size
        self.size, self.low = size, ends.min(axis=0) - margin
        shape = np.ceil((ends.max(axis=0) + margin - self.low) / size).astype(int)
        self.solid = np.zeros(shape, dtype=bool)
        for room in rooms:
            self._mark(*room, True)
        for wall in walls:
            self._mark(*wall, False)
        self.index = np.full(shape, -1, dtype=np.int64)
        cells = np.argwhere(self.solid)
        self.index[tuple(cells.T)] = np.arange(len(cells))
        self.cells, self.at = cells, self.low + (cells + 0.5) * size
        self.volume = len(cells) * size**3 / 1000
        self.pairs = self._pairs()
        self.mouths = np.zeros(len(cells), dtype=bool)

    def _mark(self, start, end, radius, value):
        """Sets the cubes whose middle lies in a cylinder with flat ends."""
        start, end = np.asarray(start, float), np.asarray(end, float)
        length = np.linalg.norm(end - start)
        along = (end - start) / length
        box_low = np.minimum(start, end) - radius - self.size
        box_high = np.maximum(start, end) + radius + self.size
        first = np.maximum(0, np.floor((box_low - self.low) / self.size).astype(int))
        last = np.minimum(self.solid.shape, np.ceil((box_high - self.low) / self.size).astype(int))
        axes = [self.low[k] + (np.arange(first[k], last[k]) + 0.5) * self.size - start[k] for k in range(3)]
        x, y, z = np.meshgrid(*axes, indexing="ij", sparse=True)
        s = x * along[0] + y * along[1] + z * along[2]
        inside = (s >= 0) & (s <= length) & (x * x + y * y + z * z - s * s <= radius * radius)
        window = tuple(slice(a, b) for a, b in zip(first, last, strict=True))
        self.solid[window][inside] = value

    def _pairs(self):
        """Every two neighbouring cubes, by number."""
        found = []
        for step in STEPS:
            moved = self.cells + step
            other = self.index[tuple(np.clip(moved, 0, np.array(self.solid.shape) - 1).T)]
            here = np.flatnonzero(other >= 0)
            found.append(np.stack([here, other[here]]))
        return np.concatenate(found, axis=1)

    def drill(self, at, outward, radius, reach):
        """A hole from a point on a bore's axis outwards: the last cubes of the room that it meets."""
        at, outward = np.asarray(at, float), np.asarray(outward, float)
        s = (self.at - at) @ outward
        off = np.linalg.norm(self.at - at - s[:, None] * outward, axis=1)
        near = np.flatnonzero((s > 0) & (s < reach) & (off <= radius))
        beyond = np.floor((self.at[near] + outward * self.size - self.low) / self.size).astype(int)
        self.mouths[near[~self.solid[tuple(beyond.T)]]] = True

    def open_end(self, at, along, radius):
        """A bore's end left open: its last layer of cubes."""
        s = (self.at - np.asarray(at, float)) @ np.asarray(along, float)
        off = np.linalg.norm(self.at - at - s[:, None] * np.asarray(along), axis=1)
        self.mouths |= (s <= 0) & (s > -1.01 * self.size) & (off <= radius)

    def caught(self, up):
        """Air that stays [ml], and its middle [mm], with ``up`` in body axes."""
        height = self.at @ np.asarray(up, float)
        level = self._levels(height)
        airy = height > level + 1e-9
        airy |= ~self._reached(height, level)
        volume = airy.sum() * self.size**3 / 1000
        return volume, self.at[airy].mean(axis=0) if airy.any() else None

    def _levels(self, height):
        """For each cube, the lowest height on its best way out; -inf where there is none."""
        count = len(height)
        outside = np.flatnonzero(self.mouths)
        a = np.concatenate([self.pairs[0], outside])
        b = np.concatenate([self.pairs[1], np.full(len(outside), count)])
        ways = np.concatenate([np.minimum(height[self.pairs[0]], height[self.pairs[1]]), height[outside]])
        cost = height.max() + 1.0 - ways
        tree = minimum_spanning_tree(coo_array((cost, (a, b)), shape=(count + 1, count + 1)).tocsr())
        order, before = breadth_first_order(tree + tree.T, count, directed=False)
        lowest = np.full(count + 1, -np.inf)
        lowest[count] = np.inf
        tall = np.append(height, np.inf)
        for cube in order[1:]:
            lowest[cube] = min(lowest[before[cube]], tall[cube])
        return lowest[:count]

    def _reached(self, height, level):
        """Which cubes water reaches from a mouth through cubes that are not held dry."""
        wet = height <= level + 1e-9
        count = len(height)
        both = wet[self.pairs[0]] & wet[self.pairs[1]]
        sources = np.flatnonzero(self.mouths & wet)
        a = np.concatenate([self.pairs[0][both], sources])
        b = np.concatenate([self.pairs[1][both], np.full(len(sources), count)])
        graph = coo_array((np.ones(len(a)), (a, b)), shape=(count + 1, count + 1)).tocsr()
        group = connected_components(graph, directed=False)[1]
        return wet & (group[:count] == group[count])
