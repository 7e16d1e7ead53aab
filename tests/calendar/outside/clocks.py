"""Wall-clock and calendar arithmetic of the standard library, for cases given as JSON on standard input."""
import calendar
import datetime
import json
import sys
import zoneinfo

MINUTE = datetime.timedelta(minutes=1)
UTC = datetime.timezone.utc


def soak(zone, start, minutes):
    """Where the clock stands so many minutes after a time that it showed; and that moment in universal time."""
    local = datetime.datetime.fromisoformat(start).replace(tzinfo=zoneinfo.ZoneInfo(zone))
    end = local.astimezone(UTC) + minutes * MINUTE
    return [end.astimezone(zoneinfo.ZoneInfo(zone)).strftime('%Y-%m-%d %H:%M'), end.strftime('%Y%m%dT%H%M%SZ')]


def months(start, number):
    """The same day of the month some months later, or the last day of that month."""
    day = datetime.date.fromisoformat(start)
    year, month = divmod(day.year * 12 + day.month - 1 + number, 12)
    return datetime.date(year, month + 1, min(day.day, calendar.monthrange(year, month + 1)[1])).isoformat()


def days(start, number):
    return (datetime.date.fromisoformat(start) + datetime.timedelta(days=number)).isoformat()


kinds = {'soak': soak, 'months': months, 'days': days}
print(json.dumps([kinds[kind](*given) for kind, *given in json.load(sys.stdin)]))
