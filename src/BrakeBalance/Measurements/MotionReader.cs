namespace BrakeBalance.Measurements;

/// <summary>Reads time series and laps: columns of any name, times of any form, and the noise that such logs have.</summary>
internal static class MotionReader
{
    private const double StandingSpeed = 0.5;
    private const double EarthRadius = 6_371_000;
    private const double Midnight = 86_400;

    public static LogReading<MotionSample> Read(TextReader reader, IReadOnlyList<ColumnChoice> choices, bool onlySpeed)
    {
        LogTable table = LogTable.Read(reader, preamble: true);
        var cells = new LogCells(table);
        (IReadOnlyList<LogColumn> columns, IReadOnlyList<string> asked) = SeriesColumns.Guess(table, cells, choices);
        cells.Problems.AddRange(asked.Select(text => new LogProblem(cells.HeaderLine, text)));
        LogColumn? Of(ColumnMeaning meaning) => columns.FirstOrDefault(c => c.Meaning == meaning);
        LogCells.Column<T>? In<T>(Dictionary<string, Func<double, T>> units, ColumnMeaning meaning) =>
            Of(meaning) is { } column ? cells.Number(units, column.Index, column.Unit, column.Words) : null;
        LogColumn? timeColumn = Of(ColumnMeaning.Time);
        bool isClock = timeColumn?.Unit == SeriesColumns.Clock;
        var time = isClock ? null : In(LogUnits.Durations, ColumnMeaning.Time);
        var speed = In(LogUnits.Speeds, ColumnMeaning.Speed);
        LogCells.Column<Speed>?[] wheels = [.. Enumerable.Range((int)ColumnMeaning.WheelFrontLeft, 4)
            .Select(corner => In(LogUnits.Speeds, (ColumnMeaning)corner))];
        var (latitude, longitude) = (In(LogUnits.Degrees, ColumnMeaning.Latitude), In(LogUnits.Degrees, ColumnMeaning.Longitude));
        var acceleration = In(LogUnits.Accelerations, ColumnMeaning.Acceleration);
        var (x, y, z) = (In(LogUnits.Accelerations, ColumnMeaning.AccelerationX), In(LogUnits.Accelerations, ColumnMeaning.AccelerationY),
            In(LogUnits.Accelerations, ColumnMeaning.AccelerationZ));
        var (front, rear) = (In(LogUnits.Pressures, ColumnMeaning.FrontPressure), In(LogUnits.Pressures, ColumnMeaning.RearPressure));
        (LogColumn? pedal, LogColumn? light) = (Of(ColumnMeaning.Pedal), Of(ColumnMeaning.BrakeSwitch));
        bool hasSpeed = speed is not null || wheels.Any(w => w is not null) || latitude is not null && longitude is not null;
        bool hasAcceleration = acceleration is not null || x is not null && y is not null && z is not null;
        if (timeColumn is null || time is null && !isClock || !hasSpeed && (onlySpeed || !hasAcceleration))
        {
            (string what, string example) = timeColumn is null || time is null && !isClock ? ("time", "time [s]")
                : onlySpeed ? ("speed", "speed [km/h]") : ("speed' or 'acceleration", "speed [km/h]' or 'acceleration [m/s2]");
            cells.Missing(what, example);
            return cells.Nothing<MotionSample>() with { Columns = columns };
        }

        double last = double.NegativeInfinity, days = 0, origin = double.NaN;
        int standing = 0, silent = 0;
        int[] used = [.. columns.Where(c => c.Meaning is not (ColumnMeaning.None or ColumnMeaning.Time)
            && (!onlySpeed || c.Meaning <= ColumnMeaning.Longitude)).Select(c => c.Index)];

        // Where one row in ten has nothing to say the channels run at rates of their own.
        bool mixed = table.Rows.Count(row => used.All(i => i >= row.Cells.Length || LogNumbers.IsMissing(row.Cells[i])))
            > Math.Max(5, 0.1 * table.Rows.Count);

        Speed? Rolling(LogCells.Column<Speed>? column)
        {
            Speed? v = cells.Value(column, -StandingSpeed, 150, s => s.MetersPerSecond, "a speed lies from 0 to 540 km/h");
            standing += v < Speed.Zero ? 1 : 0;
            return v < Speed.Zero ? Speed.Zero : v;
        }

        double? Seconds()
        {
            if (!isClock)
            {
                double? given = cells.Value(time, -1e13, 1e13, t => t.Seconds, "a time is a number of seconds")?.Seconds;
                origin = double.IsNaN(origin) && given is { } first ? (first is > 8e8 and < 4e9 ? first : 0) : origin;
                return given is not { } s ? null : s - origin is >= -1e7 and <= 1e7 ? s - origin : Bad("time counts up from 0");
            }

            string cell = cells.Cell(timeColumn.Index);
            if (cell.Length == 0)
            {
                return null;
            }

            if (LogNumbers.Moment(cell) is not { } moment)
            {
                return Bad($"'{cell}' is no time such as 14:03:07.250");
            }

            days += moment + days < last + origin - Midnight / 2 && moment < Midnight ? Midnight : 0;
            origin = double.IsNaN(origin) ? moment : origin;
            return moment + days - origin is >= -1e7 and <= 1e7 and double at ? at : Bad("a log lasts less than 100 days");
        }

        double? Bad(string reason)
        {
            cells.Fault($"time: {reason}");
            return null;
        }

        LogReading<Row> reading = cells.ReadRows<Row>(line =>
        {
            double? at = Seconds();
            Speed? v = Rolling(speed);
            Speed?[] rims = [.. wheels.Select(Rolling)];
            Acceleration? a = Axis(cells, acceleration);
            (Acceleration? ax, Acceleration? ay, Acceleration? az) = (Axis(cells, x), Axis(cells, y), Axis(cells, z));
            double? north = cells.Value(latitude, -90, 90, d => d, "a latitude lies from -90 to 90°");
            double? east = cells.Value(longitude, -180, 180, d => d, "a longitude lies from -180 to 180°");
            var sample = new MotionSample
            {
                Line = line,
                Time = Duration.FromSeconds(at ?? 0),
                Speed = v ?? (speed is null ? rims.Max() : null),
                Wheels = (rims[0], rims[1], rims[2], rims[3]),
                Acceleration = a,
                Axes = ax is { } vx && ay is { } vy && az is { } vz ? (vx, vy, vz) : null,
                FrontPressure = Bounded(cells, front),
                RearPressure = Bounded(cells, rear),
                Pedal = pedal is null ? null : cells.Plain(cells.Cell(pedal.Index)),
                BrakeOn = light is null ? null : IsOn(cells.Cell(light.Index)),
            };
            if (at is null)
            {
                cells.Fault("the time is missing");
                return null;
            }

            (double, double)? place = north is { } n && east is { } e && (n, e) is not (0, 0) ? (n, e) : null;
            if (sample is { Speed: null, Acceleration: null, Axes: null } && place is null
                && (onlySpeed || sample is { FrontPressure: null, RearPressure: null, Pedal: null, BrakeOn: null }))
            {
                silent += mixed ? 1 : 0;
                if (!mixed)
                {
                    cells.Fault(onlySpeed ? "the speed is missing" : "neither a speed nor an acceleration is given");
                }

                return null;
            }

            last = Math.Max(last, at.Value);
            return new Row(sample, place);
        });
        List<Row> rows = [];
        List<(MotionSample Sample, Duration Before)> backwards = [];
        foreach (Row row in reading.Rows)
        {
            if (rows.Count == 0 || row.Sample.Time > rows[^1].Sample.Time)
            {
                rows.Add(row);
            }
            else if (row.Sample.Time.Equals((object)rows[^1].Sample.Time) && rows[^1].With(row) is var joined && joined != rows[^1])
            {
                rows[^1] = joined;
            }
            else
            {
                backwards.Add((row.Sample, rows[^1].Sample.Time));
            }
        }

        if (speed is null && wheels.All(w => w is null) && latitude is not null && longitude is not null)
        {
            FromPlaces(rows);
            rows = onlySpeed ? [.. rows.Where(row => row.Sample.Speed is not null)] : rows;
        }

        List<string> noise = [];
        Count(noise, backwards.Count, "row whose time does not come after the one before was",
            "rows whose time does not come after the one before were",
            backwards is [var first, ..] ? Invariant.Text($"passed over (first in line {first.Sample.Line}: "
                + $"{first.Sample.Time.Seconds:0.####} s does not come after {first.Before.Seconds:0.####} s)") : "");
        Count(noise, standing, "slightly negative speed", "slightly negative speeds", standing == 1 ? "counts as standing"
            : "count as standing");
        Count(noise, silent, "row holds", "rows hold", "nothing that is used");
        bool tooNoisy = backwards.Count > 0.1 * Math.Max(1, table.Rows.Count);
        return new LogReading<MotionSample>
        {
            Rows = [.. rows.Select(row => row.Sample)],
            Columns = columns,
            Lost = reading.Lost + (tooNoisy ? backwards.Count : 0),
            Problems = noise.Count == 0 ? reading.Problems : [.. reading.Problems.Append(
                new LogProblem(backwards is [var back, ..] ? back.Sample.Line : cells.HeaderLine, "noise: " + string.Join("; ", noise)))
                .OrderBy(p => p.Line)],
            Remarks = reading.Remarks,
        };
    }

    private static void Count(List<string> noise, int count, string one, string many, string rest)
    {
        if (count > 0)
        {
            noise.Add(Invariant.Text($"{count} {(count == 1 ? one : many)} {rest}"));
        }
    }

    // A row as it was read. Rows of one time are one: what the first does not know the others may.
    private sealed record Row(MotionSample Sample, (double North, double East)? Place)
    {
        public Row With(Row more) => new(Joined(Sample, more.Sample), Place ?? more.Place);

        private static MotionSample Joined(MotionSample known, MotionSample more) => known with
        {
            Speed = known.Speed ?? more.Speed,
            Acceleration = known.Acceleration ?? more.Acceleration,
            Axes = known.Axes ?? more.Axes,
            FrontPressure = known.FrontPressure ?? more.FrontPressure,
            RearPressure = known.RearPressure ?? more.RearPressure,
            Wheels = (known.Wheels.FrontLeft ?? more.Wheels.FrontLeft, known.Wheels.FrontRight ?? more.Wheels.FrontRight,
                known.Wheels.RearLeft ?? more.Wheels.RearLeft, known.Wheels.RearRight ?? more.Wheels.RearRight),
            Pedal = known.Pedal ?? more.Pedal,
            BrakeOn = known.BrakeOn ?? more.BrakeOn,
        };
    }

    // Speed at a position by the parabola through it and its neighbours; a place that does not change was not renewed.
    private static void FromPlaces(List<Row> rows)
    {
        List<int> kept = [];
        foreach (int i in Enumerable.Range(0, rows.Count).Where(i => rows[i].Place is not null))
        {
            double since = kept.Count == 0 ? 1 : rows[i].Sample.Time.Seconds - rows[kept[^1]].Sample.Time.Seconds;
            if (since >= 0.9 || since >= 0.06 && rows[i].Place != rows[kept[^1]].Place)
            {
                kept.Add(i);
            }
        }

        (double Seconds, double V)[] ways = [.. kept.Zip(kept.Skip(1), (from, to) =>
        {
            ((double there, double thereEast), (double here, double hereEast)) = (rows[from].Place!.Value, rows[to].Place!.Value);
            double seconds = rows[to].Sample.Time.Seconds - rows[from].Sample.Time.Seconds, north = here - there;
            double east = (hereEast - thereEast) * Math.Cos(here * Math.PI / 180);
            return (seconds, EarthRadius * Math.PI / 180 * Math.Sqrt(north * north + east * east) / seconds);
        })];
        for (int k = 1; k < ways.Length; k++)
        {
            ((double before, double from), (double after, double to)) = (ways[k - 1], ways[k]);
            double v = (from * after + to * before) / (before + after);
            if (v < 150)
            {
                rows[kept[k]] = rows[kept[k]] with { Sample = rows[kept[k]].Sample with { Speed = Speed.FromMetersPerSecond(v) } };
            }
        }
    }

    private static bool? IsOn(string cell) => cell.ToLowerInvariant() switch
    {
        "1" or "on" or "true" or "yes" or "pressed" or "active" or "closed" => true,
        "0" or "off" or "false" or "no" or "released" or "inactive" or "open" => false,
        _ => null,
    };

    private static Pressure? Bounded(LogCells cells, LogCells.Column<Pressure>? column) =>
        cells.Value(column, -1e5, 3e7, p => p.Pascals, LogReader.PressureRange) is { } p ? UnitMath.Max(p, Pressure.Zero) : null;

    private static Acceleration? Axis(LogCells cells, LogCells.Column<Acceleration>? column) =>
        cells.Value(column, -80, 80, a => a.MetersPerSecondSquared, "an acceleration lies from -8 to 8 g");
}
