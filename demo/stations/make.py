"""Makes sallowmere.csv: an invented season of the island Ondrelay, hour by hour. Nothing of it was measured.

Run in this folder: python3 make.py > sallowmere.csv
The same numbers every time: the only chance is a small generator with a fixed seed.
"""
import datetime as dt
import math
import sys

state = 20260501


def chance():
    """The next number from 0 to 1 (a generator of Lehmer's kind)."""
    global state
    state = state * 48271 % 2147483647
    return state / 2147483647


print("time,temperature,humidity,rain,wetness,radiation,wind")
start, hours = dt.datetime(2026, 5, 1), 24 * 123
front, rain_left, drift = 0.0, 0, 0.0
for h in range(hours):
    time = start + dt.timedelta(hours=h)
    season = math.sin(math.pi * (time.timetuple().tm_yday - 100) / 210)
    if h % 24 == 0 and chance() < 0.30:
        rain_left = int(4 + 20 * chance())      # a front: hours of rain, then mild, humid air
        front = 1.0
    front *= 0.975
    drift = 0.97 * drift + 0.5 * (chance() - 0.5)
    clock = math.sin(math.pi * (time.hour - 8) / 12)
    swing = (3.2 - 2.2 * front) * clock
    celsius = 9.5 + 7.0 * season + swing + drift + 0.8 * front
    percent = 79 + 15 * front - (11 - 6 * front) * clock + 6 * (chance() - 0.5)
    rain = 0.0
    if rain_left > 0:
        rain_left -= 1
        rain = round(2.4 * chance() ** 2, 1)
        percent = max(percent, 95.5 + 3 * chance())
    percent = min(100, max(38, percent))
    sun = math.sin(math.pi * (time.hour - 5) / 15) if 5 <= time.hour <= 20 else 0
    watts = max(0, (720 - 480 * front) * sun * (0.7 + 0.3 * chance()))
    wind = 3.5 + 3 * front + 2.5 * (chance() - 0.5)
    wet = 60 if rain > 0 or percent >= 92 else int(60 * max(0, (percent - 88) / 4))
    if time.date() == dt.date(2026, 6, 9) and 3 <= time.hour < 8:
        print(f"{time:%Y-%m-%dT%H:%M},,,,,,")   # a flat battery
        continue
    if time == dt.datetime(2026, 7, 2, 14):
        celsius = 71.3                            # a bird on the shield
    print(f"{time:%Y-%m-%dT%H:%M},{celsius:.1f},{percent:.0f},{rain:.1f},{wet},{watts:.0f},{wind:.1f}")
