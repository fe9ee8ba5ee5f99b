"""Run one command and print, as one line, its seconds, its peak memory in the system's unit, and its exit status.

    python -I -S tests/bench/timed.py COMMAND [ARGUMENTS]

A file of its own, started anew for each command, because the system counts into a process's peak what its parent held
when it was started: this parent holds next to nothing.
What the command prints goes to the standard error.
"""

from __future__ import annotations

import os
import sys
import time


def main(command: list[str]) -> None:
    """Start the command, wait for its end, and print the line."""
    start = time.perf_counter()
    process = os.posix_spawn(command[0], command, os.environ, file_actions=[(os.POSIX_SPAWN_DUP2, 2, 1)])
    _, status, usage = os.wait4(process, 0)
    seconds = time.perf_counter() - start
    sys.stdout.write(f"{seconds} {usage.ru_maxrss} {os.waitstatus_to_exitcode(status)}\n")


if __name__ == "__main__":
    main(sys.argv[1:])
