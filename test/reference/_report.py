"""What every script here prints: its name, the versions it ran with, and its cases, as JSON."""

import json
import sys
from importlib.metadata import version
from pathlib import Path


def case(id, inputs, expected, tolerance, why):
    """`expected` and `tolerance` are in the unit the inputs and the id name; `why` is for the tolerance."""
    return {"id": id, "inputs": inputs, "expected": expected, "tolerance": tolerance, "why": why}


def report(libraries, cases):
    ids = [each["id"] for each in cases]
    assert len(set(ids)) == len(ids), "every id once"
    answer = {
        "script": Path(sys.argv[0]).name,
        "libraries": {name: version(name) for name in libraries},
        "cases": cases,
    }
    print(json.dumps(answer, indent=2, allow_nan=False, ensure_ascii=False))
