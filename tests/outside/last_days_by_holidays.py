"""Writes last days to cancel, or holidays, by the package `holidays`: an outside check of the calendar.

`last-days FIRST LAST`: for each day signed from 1 January of FIRST to 31 December of LAST a line `signed last by-named`: the third
day after it that is no Sunday and no holiday, first with observed days left out as well, then with named days alone.
`holidays FIRST LAST`: a line `day named` or `day observed` for each holiday, sorted; a day that is both is named.
The first line says which version answered.

Source: PyPI `holidays`, the United States without any state.
"""

import sys
from datetime import date, timedelta

import holidays

SUNDAY = 6


def third_business_day(signed, closed):
    following = (signed + timedelta(days=n) for n in range(1, 30))
    open_days = [day for day in following if day.weekday() != SUNDAY and day not in closed]
    return open_days[2]


what, first, last = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
# A year more: a span may end in it, and its New Year's Day may be observed in the year before.
years = range(first, last + 2)
named = set(holidays.US(years=years, observed=False))
with_observed = set(holidays.US(years=years, observed=True))
print(f"holidays {holidays.__version__}")
day = date(first, 1, 1)
while day.year <= last:
    if what == "last-days":
        print(day, third_business_day(day, with_observed), third_business_day(day, named))
    elif day in named:
        print(day, "named")
    elif day in with_observed:
        print(day, "observed")
    day += timedelta(days=1)
