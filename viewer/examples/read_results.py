"""Reads what Hemline leaves with plain Python, nothing to install.

    viewer/hemline rank profiles --gaps 1mm..4mm --suction 600Pa --out results
    viewer/hemline batch profiles --gaps 1mm..3mm --suctions 600Pa --mesh coarse --out results
    python3 viewer/examples/read_results.py results

Prints the answer of every document in the folder. Readers of Arrow (in pandas, R, Julia, ...) take
results/batch.arrow without converting.
"""

import csv
import json
import sys
from collections import defaultdict
from pathlib import Path


def band(estimate, factor=1.0):
    """An estimate of a document with the ends of its band; documents are in SI units."""
    value, low, high = (factor * estimate[key] for key in ("value", "low", "high"))
    return f"{value:.4g} ({low:.4g} to {high:.4g})"


def result(document, folder):
    section = document["section"]
    print(f"{section['profile']}, gap {1e3 * section['gap']:g} mm: {document['status']}")
    for key, estimate in document["figures"].items():
        if isinstance(estimate, dict):
            print(f"  {key}: {band(estimate)} {estimate['unit']}")


def sweep(document, folder):
    for point in document["points"]:
        section, leak = point["section"], point["figures"].get("leakFlow")
        told = band(leak, 1e3) + " L/s per m" if leak else "no usable flow"
        print(f"gap {1e3 * section['gap']:g} mm, {section['suction']:g} Pa: {told}")


def ranking(document, folder):
    print(f"leak over that of {document['baseline']} at {document['suction']:g} Pa")
    for row in document["rows"]:
        ratio = row["relativeLeak"]
        print(f"{row['rank']:3} {row['profile']}: {band(ratio) if ratio else 'unknown'}")


def balance(document, folder):
    points = document["operatingPoints"]
    print(f"{document['machine']['name']}: {len(points)} operating points")
    for point in points:
        print(f"  suction {band(point['suction'])} Pa" + ("" if point["stable"] else ", unstable"))


def check(document, folder):
    counts = document["summary"]
    print(f"{counts['rows']} rows: {counts['passed']} met, {counts['failed']} failed")


def batch(document, folder):
    print(f"{document['sections']} sections, {document['mesh']} mesh")
    at = defaultdict(list)
    with open(folder / "batch.csv", encoding="utf-8", newline="") as table:
        for row in csv.DictReader(table):
            if row["leakFlow_m2_s"]:  # empty where no flow was found
                ends = [1e3 * float(row[f"leakFlow{end}_m2_s"]) for end in ("", "Low", "High")]
                place = row["gap_m"], row["suction_Pa"], row["groundSpeed_m_s"]
                at[tuple(map(float, place))].append((ends, row["lip"], row["notices"]))
    for (gap, suction, speed), lips in sorted(at.items()):
        (leak, low, high), name, notices = min(lips)
        clear = all(high < other[0][1] for other in lips if other[1] != name)
        print(
            f"{1e3 * gap:g} mm, {suction:g} Pa, {speed:g} m/s: {name}, "
            f"{leak:.4g} L/s per m ({low:.4g} to {high:.4g})"
            + (", clear of the others" if clear else ", not clear of the others")
            + (" *" if notices else "")
        )
    print("* carries notices; compare lips by `rank`, whose ratios have bands of their own")


READERS = {
    "hemline.result/1": result,
    "hemline.sweep/1": sweep,
    "hemline.ranking/1": ranking,
    "hemline.balance/1": balance,
    "hemline.check/1": check,
    "hemline.batch/1": batch,
}


def main(folder):
    for file in sorted(folder.glob("*.json")):
        document = json.loads(file.read_text(encoding="utf-8"))
        reader = READERS.get(document.get("schema"))
        if reader:
            print(f"-- {file.name}")
            reader(document, folder)


if __name__ == "__main__":
    main(Path(sys.argv[1] if len(sys.argv) > 1 else "hemline-results"))
