"""The process log: times, limits, what was out of them and why."""
