"""What the usual scientific Python makes of a guide table: parse, RMS, drift, periodogram and six SVG charts.

python3 general.py ten-hours.ecsv folder

No part of the tool: only a yardstick for how long such work takes. Needs numpy, scipy and matplotlib (Debian: python3-matplotlib,
python3-scipy).
"""

import csv
import json
import pathlib
import sys

import matplotlib

matplotlib.use("svg")
import matplotlib.pyplot as plt
import numpy as np
from scipy import signal, stats

ARCSEC_PER_MS = 0.5 * 15.041 / 1000  # a guide rate of half the sidereal one
PERIODS_S = np.geomspace(20, 3600, 2000)

table, folder = sys.argv[1], pathlib.Path(sys.argv[2])
folder.mkdir(parents=True, exist_ok=True)

with open(table, newline="", encoding="utf-8") as lines:
    rows = list(csv.DictReader(line for line in lines if not line.startswith("#")))


def column(name):
    return np.array([float(row[name] or "nan") for row in rows])


run, seconds, ra, dec = column("run"), column("time"), column("ra_offset"), column("dec_offset")
ra_pulse, dec_pulse = np.nan_to_num(column("ra_pulse")), np.nan_to_num(column("dec_pulse"))
used = np.isfinite(ra) & np.isfinite(dec) & np.array([not row["event"] for row in rows])
figures = {"rms_ra": float(np.std(ra[used])), "rms_dec": float(np.std(dec[used])), "runs": []}


def motion(offsets, pulses, chosen):
    """What the star would have done without the pulses: each takes the offset down after its frame [arcsec]."""
    return offsets[chosen] + np.concatenate([[0], np.cumsum(pulses[chosen])[:-1]]) * ARCSEC_PER_MS


def chart(name, title, x, y, x_label, y_label, style="-"):
    figure, axes = plt.subplots(figsize=(9, 3.5))
    axes.plot(x, y, style, linewidth=0.8, markersize=1)
    axes.set(title=title, xlabel=x_label, ylabel=y_label)
    figure.savefig(folder / f"{name}.svg")
    plt.close(figure)


for number in np.unique(run):
    chosen = used & (run == number)
    t, east, north = seconds[chosen], motion(ra, ra_pulse, chosen), motion(dec, dec_pulse, chosen)
    fits = [stats.linregress(t, moved) for moved in (east, north)]
    power = signal.lombscargle(t, signal.detrend(east), 2 * np.pi / PERIODS_S, normalize=True)
    figures["runs"].append(
        {
            "run": int(number),
            "drift_arcsec_per_min": [60 * fit.slope for fit in fits],
            "period_s": float(PERIODS_S[np.argmax(power)]),
        }
    )

chart("ra", "Offset in right ascension", seconds, ra, "time [s]", "offset [arcsec]")
chart("dec", "Offset in declination", seconds, dec, "time [s]", "offset [arcsec]")
chart("cloud", "Offsets", ra[used], dec[used], "east [arcsec]", "north [arcsec]", ".")
chart("ra-motion", "Motion in right ascension, last run", t, east, "time [s]", "motion [arcsec]")
chart("dec-motion", "Motion in declination, last run", t, north, "time [s]", "motion [arcsec]")
chart("periodogram", "Periodogram, last run", PERIODS_S, power, "period [s]", "power")
(folder / "figures.json").write_text(json.dumps(figures, indent=2), encoding="utf-8")
