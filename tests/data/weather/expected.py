"""Computes the values of the weather models over dunsany-2017-season.csv a second time, from the definitions, in whole tenths of a degree.

Run in this folder: python3 expected.py > dunsany-2017-expected.csv
An empty cell is a day that cannot be told.
"""
import csv
import datetime as dt
from fractions import Fraction as F

rows = {}
for row in csv.DictReader(open("dunsany-2017-season.csv")):
    time = dt.datetime.fromisoformat(row["date"].replace("Z", ""))
    rows[time] = (F(row["temp"]), F(row["rhum"]), F(row["rain"]))
times = sorted(rows)
hour = dt.timedelta(hours=1)
days = sorted({time.date() for time in times})
day_hours = {day: [dt.datetime(day.year, day.month, day.day) + k * hour for k in range(24)] for day in days}


def runs(test):
    """Lists of hours on end that meet the test."""
    found, now = [], []
    for time in times:
        if test(*rows[time]):
            now.append(time)
        else:
            if now:
                found.append(now)
            now = []
    return found + ([now] if now else [])


def mean(hours):
    return sum(rows[h][0] for h in hours) / len(hours)


def severity(hours):
    t, n = mean(hours), len(hours)
    if F("7.2") <= t < F("11.7"):
        limits = (16, 19, 22, 25)
    elif F("11.7") <= t < F("15.1"):
        limits = (13, 16, 19, 22)
    elif F("15.1") <= t < F("26.7"):
        limits = (10, 13, 16, 19)
    else:
        limits = ()
    return sum(n >= limit for limit in limits)


def blight_units(n, t):
    """Susceptible: the first hours of each unit, by whole degrees with halves up."""
    whole = (t + F(1, 2)).__floor__()
    if 23 <= whole <= 27:
        table = {0: 0, 7: 1, 10: 2, 13: 3, 16: 4, 19: 5}
    elif 13 <= whole <= 22:
        table = {0: 0, 7: 5, 10: 6, 13: 7}
    elif 8 <= whole <= 12:
        table = {0: 0, 7: 1, 8: 2, 10: 3, 11: 4, 13: 5, 16: 6}
    elif 3 <= whole <= 7:
        table = {0: 0, 10: 1, 13: 2, 16: 3, 19: 4}
    else:
        table = {0: 0}
    return table[max(first for first in table if n >= first)]


def growth(t):
    if t < 7 or t > 30:
        return F(0)
    span = 14 if t <= 21 else 9
    return 10 * (1 - (t - 21) ** 2 / F(span) ** 2)


wet = runs(lambda t, h, r: h >= 90)
blight = runs(lambda t, h, r: t >= 10 and h >= 90)
mild = {h for run in runs(lambda t, h, r: t >= 10 and h >= 75) for h in run[47:]}


def effective(run):
    return max(0, len(run) - (11 if any(rows[h][2] >= F("0.1") for h in run) else 15))


def day_of(run):
    return run[-1].date()


def low(hours):
    return min(rows[h][0] for h in hours)


def humid(hours):
    return sum(rows[h][1] >= 90 for h in hours)


out = csv.writer(__import__("sys").stdout, lineterminator="\n")
out.writerow(["day", "severity-wallin", "rain-favorable-hyre", "schedule-krause", "beaumont", "smith", "hutton", "irish-bourke", "blight-units-fry", "physiological-days"])
severities, favorables = [], []
for i, day in enumerate(days):
    hours = day_hours[day]
    severities.append(sum(severity(run) for run in wet if day_of(run) == day))
    five = [mean(day_hours[d]) for d in days[max(0, i - 4): i + 1]]
    ten = [sum(rows[h][2] for h in day_hours[d]) for d in days[max(0, i - 9): i + 1]]
    favorable = None if len(ten) < 10 else int(sum(five) / 5 < F("25.5") and sum(ten) >= 30 and low(hours) >= F("7.2"))
    favorables.append(favorable)
    week = favorables[-7:]
    code = None
    if len(week) == 7 and None not in week:
        s = sum(severities[-7:])
        column = 0 if s < 3 else 5 if s > 6 else s - 2
        code = ((-1, 0, 1, 2, 2, 2) if sum(week) > 4 else (-1, -1, 0, 1, 1, 2))[column]
    beaumont = None if i < 2 else int(any(h in mild for h in hours))
    nine = dt.datetime(day.year, day.month, day.day, 9)
    last, before = [nine - k * hour for k in range(24)], [nine - (24 + k) * hour for k in range(24)]
    smith = None
    if before[-1] in rows:
        ok = low(last) >= 10 and low(before) >= 10
        least = min(humid(last), humid(before))
        smith = (1 if least >= 11 else "0.5" if least >= 10 else 0) if ok else 0
    counts = [low(h) >= 10 and humid(h) >= 6 for h in (day_hours[d] for d in days[max(0, i - 1): i + 1])]
    hutton = None if i == 0 else int(all(counts))
    wet_today = [h for h in hours if rows[h][1] >= 90]
    lowest, highest = low(hours), max(rows[h][0] for h in hours)
    p = (5 * growth(lowest) + 8 * growth((2 * lowest + highest) / 3) + 8 * growth((lowest + 2 * highest) / 3) + 3 * growth(highest)) / 24
    out.writerow([day, severities[-1], favorable, code, beaumont, smith, hutton, sum(effective(run) for run in blight if day_of(run) == day),
                  blight_units(len(wet_today), mean(wet_today)) if wet_today else 0, f"{float(p):.6f}"])
