"""``python -m kit`` as it runs for the tests of a module."""

import os
import re
import signal
import subprocess
import sys

import psutil
from live import PATIENCE


class Kit:
    """One kit that runs, its address, and the processes below it."""

    def __init__(self, home, *arguments):
        self.home = home
        surroundings = {**os.environ, "HOME": str(home), "TALK_KIT_HOME": str(home / "own"), "PYTHONUNBUFFERED": "1"}
        self.process = subprocess.Popen(
            [sys.executable, "-m", "kit", *arguments, "--no-browser"],
            cwd=home,
            env=surroundings,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            text=True,
        )
        for line in self.process.stdout:
            if found := re.match(r"Open (http://127\.0\.0\.1:\d+/\S+)", line):
                self.address = found[1]
                return
        msg = "no address was printed"
        raise RuntimeError(msg)

    def page(self, notebook):
        return self.address.replace("3_on_screen.ipynb", notebook)

    def server(self):
        return psutil.Process(self.process.pid).children()[0]

    def kernels(self):
        below = psutil.Process(self.process.pid).children(recursive=True)
        return [process for process in below if is_kernel(process)]

    def stop(self):
        self.process.send_signal(signal.SIGINT)
        self.process.wait(PATIENCE)
        self.process.stdout.close()


def is_kernel(process):
    try:
        return any("ipykernel" in word for word in process.cmdline())
    except psutil.NoSuchProcess:
        return False
