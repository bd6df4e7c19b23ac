"""The README's two commands are the ones that are run."""

import re
from pathlib import Path

ROOT = Path(__file__).parent.parent
README = (ROOT / "README.md").read_text(encoding="utf-8")


def commands():
    return [
        block.strip()
        for block in re.findall(r"```sh\n(.*?)```", README, re.DOTALL)
        if block.startswith("python3 -m venv")
    ]


def test_readme_sets_everything_up_with_exactly_two_commands():
    begin, test = commands()
    assert begin.endswith(".venv/bin/python -m kit")
    assert test.endswith(".venv/bin/python -m pytest -n 2")


def test_continuous_integration_runs_the_readmes_test_command_to_the_letter():
    run = (ROOT / ".ci" / "run").read_text(encoding="utf-8")
    assert run.splitlines()[-1] == commands()[1]


def test_readme_opens_with_the_job_in_one_paragraph():
    title, job, *_rest = README.split("\n\n")
    assert title.startswith("# ")
    assert job.startswith("A dietitian who gives live cooking talks")


def test_every_notebook_is_in_the_readmes_table():
    for notebook in (ROOT / "notebooks").glob("*.ipynb"):
        assert f"`{notebook.stem}`" in README
