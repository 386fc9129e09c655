"""Reads what Hemline leaves with plain Python, nothing to install.

    viewer/hemline batch profiles --gaps 1mm..3mm --steps 3 --suctions 600Pa --mesh coarse --out results
    python3 viewer/examples/read_results.py results

Prints the lip that leaks least at each gap and suction, and whether its band keeps clear of the
next one. Readers of Arrow (in pandas, R, Julia, ...) take results/batch.arrow without converting.
"""

import csv
import json
import sys
from collections import defaultdict
from pathlib import Path


def number(cell):
    return float(cell) if cell else None


def main(folder):
    about = json.loads((folder / "batch.json").read_text(encoding="utf-8"))
    assert about["schema"] == "hemline.batch/1", about["schema"]
    print(about["sections"], "sections,", about["mesh"], "mesh, solver", about["madeBy"]["solver"])

    at = defaultdict(list)
    with open(folder / "batch.csv", encoding="utf-8", newline="") as table:
        for row in csv.DictReader(table):
            leak = number(row["leakFlow_m2_s"])
            if leak is None:  # no flow was found there
                continue
            band = number(row["leakFlowLow_m2_s"]), number(row["leakFlowHigh_m2_s"])
            place = float(row["gap_m"]), float(row["suction_Pa"]), float(row["groundSpeed_m_s"])
            at[place].append((leak, band, row["lip"], row["notices"]))

    for (gap, suction, speed), lips in sorted(at.items()):
        lips.sort()
        leak, (low, high), name, notices = lips[0]
        clear = len(lips) > 1 and high < lips[1][1][0]
        print(
            f"{1e3 * gap:g} mm, {suction:g} Pa, {speed:g} m/s: {name}, "
            f"{1e3 * leak:.4g} L/s per m ({1e3 * low:.4g} to {1e3 * high:.4g})"
            + (", clear of the next" if clear else ", not clear of the next")
            + (" *" if notices else "")
        )
    print("* carries notices; compare lips by `rank`, whose ratios have bands of their own")


if __name__ == "__main__":
    main(Path(sys.argv[1] if len(sys.argv) > 1 else "hemline-results"))
