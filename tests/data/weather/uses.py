"""Computes over dunsany-2017-season.csv, a second time and from the definitions, what is made of the weather beyond the models.

Run in this folder: python3 uses.py > dunsany-2017-uses.csv
For each day: days of infection by late blight in the 21 days up to it; the first and last hour of infection, in hours before noon of the day, for a lesion of
4 to 6 mm seen then (or why there is no answer); since a spray of chlorothalonil on 1 June, for a susceptible cultivar, rain, blight units and fungicide units.
"""
import csv
import datetime as dt
import math

rows = []
for row in csv.DictReader(open("dunsany-2017-season.csv")):
    rows.append((dt.datetime.fromisoformat(row["date"].replace("Z", "")), float(row["temp"]), float(row["rhum"]), float(row["rain"])))
rows.sort()
start = rows[0][0]
assert [(row[0] - start) // dt.timedelta(hours=1) for row in rows] == list(range(len(rows))) and start.hour == 0
days = len(rows) // 24


def needed(t):
    return 16 if 7.2 <= t < 11.7 else 13 if 11.7 <= t < 15.1 else 10 if 15.1 <= t < 26.7 else math.inf


def infection_day(day):
    return min(1, sum(1 / needed(t) for _, t, h, _ in rows[day * 24: day * 24 + 24] if h >= 90))


def growth(t):
    if 8 <= t <= 32.94:
        return 0.126636 - 0.038378 * t + 0.008593 * t ** 2 - 0.000229 * t ** 3
    return 0.064246 * t - 0.262690 if 4.09 <= t < 8 else 0


def beta(t):
    return (30 - t) / 8 * ((t - 3) / 19) ** (19 / 8) if 3 < t < 30 else 0


def restated(t):
    return min(1, 1 / (4.571693 - 0.310652 * t + 0.006755 * t ** 2)) if 3 < t < 30 else 0


def fast(t):
    return max(beta(t), restated(t)) / 68


def slow(t):
    return min(beta(t), restated(t)) / 93.3


def back(hour, goal, share):
    total = 0
    while total < goal - 5e-10:
        hour -= 1
        if hour < 0:
            raise LookupError
        total += share(rows[hour][1])
    return hour


def arrival(seen):
    try:
        latest = back(back(seen, 2, lambda t: 5 / 24 * growth(t)), 1, fast)
        earliest = back(back(seen, 4, lambda t: 2.5 / 24 * growth(t)), 1, slow)
        cycle = seen - back(seen, 1, lambda t: (fast(t) + slow(t)) / 2)
    except LookupError:
        return "record-starts", ""
    lacking = max(0, cycle - (latest - earliest))
    to = min(latest + lacking // 2, seen)
    first = to - max(cycle, latest - earliest)
    passed = sum((fast(t) + slow(t)) / 2 for _, t, _, _ in rows[(first + to) // 2: seen])
    return (seen - first, seen - to) if passed <= 2 else ("third-cycle", "")


def blight(day):
    wet = [round(t * 10) for _, t, h, _ in rows[day * 24: day * 24 + 24] if h >= 90]
    if not wet:
        return 0
    mean = (2 * sum(wet) + 10 * len(wet)) // (20 * len(wet))  # whole degrees, halves up
    table = ((7, 5), (10, 6), (13, 7)) if 13 <= mean <= 22 else ((7, 1), (8, 2), (10, 3), (11, 4), (13, 5), (16, 6)) if 8 <= mean <= 12 \
        else ((10, 1), (13, 2), (16, 3), (19, 4)) if 3 <= mean <= 7 else ((7, 1), (10, 2), (13, 3), (16, 4), (19, 5)) if 23 <= mean <= 27 else ()
    return max((units for hours, units in table if len(wet) >= hours), default=0)


def fungicide(since, tenths):
    rain = (tenths + 5) // 10
    table = ((1, (0, 1), (1, 4), (2, 5), (5, 6), (9, 7)), (2, (0, 1), (1, 3), (2, 4), (5, 5), (9, 6)), (3, (0, 1), (1, 3), (3, 4), (6, 5)),
             (5, (0, 1), (1, 3), (4, 4), (9, 5)), (9, (0, 1), (1, 3), (5, 4)), (14, (0, 1), (1, 2), (2, 3), (9, 4)), (10 ** 6, (0, 1), (1, 2), (9, 3)))
    steps = next(row[1:] for row in table if since <= row[0])
    return max(units for least, units in steps if rain >= least)


sprayed = (dt.datetime(2017, 6, 1) - start).days
out = csv.writer(__import__("sys").stdout, lineterminator="\n")
out.writerow(["day", "infection-days", "arrival-first", "arrival-last", "rain", "blight-units", "fungicide-units"])
sums = [0, 0, 0]
for day in range(days):
    total = f"{sum(infection_day(d) for d in range(day - 20, day + 1)):.6f}" if day >= 20 else ""
    if day > sprayed:
        tenths = sum(round(r * 10) for _, _, _, r in rows[day * 24: day * 24 + 24])
        sums = [sums[0] + tenths, sums[1] + blight(day), sums[2] + fungicide(day - sprayed, tenths)]
    since = [f"{sums[0] / 10:.1f}", sums[1], sums[2]] if day >= sprayed else ["", "", ""]
    out.writerow([(start + dt.timedelta(days=day)).date(), total, *arrival(day * 24 + 12), *since])
