"""Vehicles at a gate as processes that wait for events, in simpy: the same gate as the example program's, written apart from it."""

import numpy as np
import simpy

HOUR = 3600.0
# The gate of the example program: share, service, spread, length, speed of each kind of driver.
DRIVERS = [(0.6, 4.0, 1.0, 4.8, 2.8), (0.3, 12.0, 5.0, 4.8, 2.8), (0.1, 40.0, 25.0, 9.5, 1.7)]
ARRIVALS, GROUP, GAP, SET_OFF, HEADWAY = [20, 55, 70, 40], 1.25, 1.5, 1.5, 1.0
BEFORE, AFTER, STACKING = 3.0, 2.0, 30.0
OPENING, CLOSING, REVERSAL, DROP_OUT = 8.0, 9.0, 1.0, 0.5


def arrivals(chance: np.random.Generator) -> list[float]:
    """Leaders at random in each hour, a geometric number of others behind each."""
    leaders = [HOUR * (hour + chance.random()) for hour, count in enumerate(ARRIVALS) for _ in range(chance.poisson(count / GROUP))]
    times: list[float] = []
    for leader in sorted(leaders):
        times.append(max(leader, times[-1] if times else 0.0))
        for _ in range(chance.geometric(1 / GROUP) - 1):
            times.append(times[-1] + HEADWAY)
    return times


class Leaf:
    """A leaf that opens on a command, waits for the last vehicle that was let in, closes, and turns back."""

    def __init__(self, env: simpy.Environment, stays: float):
        self.env, self.stays = env, stays
        self.state, self.since, self.opens_at, self.due = "shut", 0.0, 0.0, 0
        self.turn, self.opened, self.shut_again = 0, 0, env.event()

    def command(self) -> str:
        """Somebody is let in; gives how the leaf stood."""
        stood, now = self.state, self.env.now
        self.due += 1
        self.turn += 1
        if stood == "shut":
            self.opens_at, self.opened = now + OPENING, self.opened + 1
        elif stood == "closing":
            self.opens_at = now + OPENING * (now - self.since) / CLOSING + REVERSAL
        self.state = "open"
        return stood

    def cleared(self):
        """The tail has left the last detector."""
        self.due -= 1
        if self.due == 0:
            self.env.process(self.closes(self.turn))

    def closes(self, turn: int):
        yield self.env.timeout(self.stays)
        if turn != self.turn or self.due:
            return
        self.state, self.since = "closing", self.env.now
        yield self.env.timeout(CLOSING)
        if turn == self.turn:
            self.state = "shut"
            self.shut_again.succeed()
            self.shut_again = self.env.event()


class Day:
    """One day of a gate with or without room between reader and gate line, open to many or one vehicle each opening."""

    def __init__(self, chance: np.random.Generator, room: bool, one_each: bool):
        self.env, self.chance, self.one_each = simpy.Environment(), chance, one_each
        self.way = 12.0 if room else 3.6
        places = int((self.way + GAP) / (max(driver[3] for driver in DRIVERS) + GAP))
        self.places = simpy.Resource(self.env, max(places, 1))
        self.waits_at_reader = places == 0
        self.reader, self.line = simpy.Resource(self.env, 1), simpy.Resource(self.env, 1)
        self.leaf = Leaf(self.env, DROP_OUT + (0.0 if one_each else 12.0))
        self.followers = 0.0 if one_each else 0.2
        self.rows: list[tuple] = []
        self.env.process(self.come())
        self.env.run()

    def come(self):
        for time in arrivals(self.chance):
            yield self.env.timeout(time - self.env.now)
            kind = DRIVERS[self.chance.choice(len(DRIVERS), p=[driver[0] for driver in DRIVERS])]
            self.env.process(self.vehicle(*kind[1:]))

    def vehicle(self, service: float, spread: float, length: float, speed: float):
        env, came = self.env, self.env.now
        reader = self.reader.request()
        yield reader
        reads = env.now
        tailgates = self.leaf.state == "open" and self.chance.random() < self.followers
        if tailgates:
            env.process(self.seen(max(self.way - BEFORE, 0.0) / speed))
            self.leaf.due, stood = self.leaf.due + 1, "open"
        else:
            yield env.timeout(service - spread + self.chance.exponential(spread))
            while self.one_each and self.leaf.state != "shut":
                yield self.leaf.shut_again
            stood = self.leaf.command()
            if self.waits_at_reader:
                yield env.timeout(max(self.leaf.opens_at - env.now, 0.0))
        place = self.places.request()
        if tailgates or not self.waits_at_reader:
            yield place
        leaves = env.now
        line = self.line.request()
        onward = (length + GAP) / speed
        env.process(self.frees(reader, SET_OFF + onward))
        yield env.timeout((0.0 if tailgates else SET_OFF) + self.way / speed)
        yield env.timeout(max(self.leaf.opens_at + SET_OFF - env.now, 0.0))
        yield line
        self.rows.append((came, reads, leaves, env.now, length, stood, tailgates))
        env.process(self.passes(line, place, length, speed))

    def seen(self, after: float):
        yield self.env.timeout(after)
        self.leaf.turn += 1

    def frees(self, reader, after: float):
        yield self.env.timeout(after)
        self.reader.release(reader)

    def passes(self, line, place, length: float, speed: float):
        through = self.env.now
        events = sorted([((length / speed) + HEADWAY, "line"), ((length + GAP) / speed, "place"), ((length + AFTER) / speed, "clear")])
        for after, what in events:
            yield self.env.timeout(through + after - self.env.now)
            if what == "line":
                self.line.release(line)
            elif what == "place":
                self.places.release(place)
            else:
                self.leaf.cleared()

    def figures(self) -> dict[str, float]:
        """What the example program tells of all hours, as sums of one day."""
        rows, ends = self.rows, HOUR * len(ARRIVALS)
        stands, beyond = 0.0, 0.0
        changes = sorted([(row[0], 1, row[4] + GAP) for row in rows] + [(row[2], -1, -row[4] - GAP) for row in rows])
        before, number, takes = 0.0, 0, 0.0
        for time, one, more in changes:
            until = min(time, ends)
            stands += number * (until - before)
            beyond += (until - before) if number and takes - GAP > STACKING + 1e-6 else 0.0
            before, number, takes = until, number + one, takes + more
        return {
            "vehicles": len(rows), "standing": stands, "in_road": beyond,
            "wait": sum(row[1] - row[0] for row in rows), "through": sum(row[3] - row[0] for row in rows),
            "openings": sum(row[5] == "shut" for row in rows), "reversals": sum(row[5] == "closing" for row in rows),
            "tailgated": sum(row[6] for row in rows), "shared": sum(row[5] == "open" and not row[6] for row in rows),
        }


def days(count: int, room: bool, one_each: bool, seed: int = 5) -> list[dict[str, float]]:
    """So many days one after the other."""
    chance = np.random.default_rng(seed)
    return [Day(chance, room, one_each).figures() for _ in range(count)]
