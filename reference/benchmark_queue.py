"""How many vehicles at a gate are worked in a second: ours against ciw, simpy and a Lindley recursion in NumPy, in one run.

Run with `python reference/benchmark_queue.py` after `cargo build --release --package sim --example queue`; it takes a minute.
Nothing here passes or fails: it prints rates and ratios. simpy works the whole gate as processes that wait for events; ciw a
bare server, which is less than the gate, to its good; NumPy the waits of a bare server and nothing else, on one processor,
where ours also counts how many stand there at every moment.
"""

import json
import os
import statistics
import subprocess
import time

import ciw
import numpy as np
import queue_by_simpy
from conftest import ROOT

EXAMPLE = os.environ.get("GATEWRIGHT_QUEUE", str(ROOT / "target/release/examples/queue"))
TIMES = 3


def here(**given) -> float:
    """Vehicles in a second of our run, by the clock."""
    words = [f"{name}={value}" for name, value in given.items()]
    rates = []
    for _ in range(TIMES):
        done = subprocess.run([EXAMPLE, *words], capture_output=True, check=True, encoding="utf-8")
        found = json.loads(done.stdout)
        rates.append(found["vehicles"] / found["seconds"])
    return statistics.median(rates)


def by_simpy() -> float:
    began = time.perf_counter()
    days = queue_by_simpy.days(100, True, False)
    return sum(day["vehicles"] for day in days) / (time.perf_counter() - began)


def by_ciw() -> float:
    network = ciw.create_network(
        arrival_distributions=[ciw.dists.Exponential(120 / 3600)],
        service_distributions=[ciw.dists.Exponential(1 / 20)],
        number_of_servers=[1],
    )
    ciw.seed(1)
    began = time.perf_counter()
    simulation = ciw.Simulation(network)
    simulation.simulate_until_max_time(200 * 3600)
    return len(simulation.get_all_records()) / (time.perf_counter() - began)


def by_lindley(count: int = 5_000_000) -> float:
    rates = []
    for seed in range(TIMES):
        chance = np.random.default_rng(seed)
        began = time.perf_counter()
        steps = chance.exponential(20.0, count)
        steps -= chance.exponential(30.0, count)
        walked = np.cumsum(steps)
        waits = walked - np.minimum.accumulate(np.minimum(walked, 0.0))
        waits.mean()
        rates.append(count / (time.perf_counter() - began))
    return statistics.median(rates)


def main() -> None:
    print(f"{os.cpu_count()} processors, load {os.getloadavg()[0]:.1f}")
    gate, bare = here(world="gate", days=60_000), here(world="bare", rate=120, days=12_000)
    one = here(world="bare", rate=120, days=12_000, threads=1)
    simpy, ciw_rate, lindley = by_simpy(), by_ciw(), by_lindley()
    print(f"  whole gate   ours {gate / 1e6:7.2f} million a second   simpy {simpy:9.0f} a second   {gate / simpy:6.0f} times as many")
    print(f"  whole gate   ours {gate / 1e6:7.2f} million a second   ciw   {ciw_rate:9.0f} a second   {gate / ciw_rate:6.0f} times as many (ciw: a bare server)")
    print(f"  bare server  ours {bare / 1e6:7.2f} million a second   NumPy {lindley / 1e6:9.2f} million      {bare / lindley:6.2f} times as many")
    print(f"  on one processor  {one / 1e6:7.2f} million a second                          {one / lindley:6.2f} times as many")


if __name__ == "__main__":
    main()
