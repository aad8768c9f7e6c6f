using System.Text.Json.Nodes;
using BrakeBalance.Notebooks.Publishing;

namespace BrakeBalance.Notebooks.Commands.Measuring;

/// <summary>What was measured and what follows, as JSON for scripts; keys end in their unit, shares and chances are fractions.</summary>
internal sealed class MeasureJson(ReportUnits units)
{
    private static JsonArray Problems(IEnumerable<LogProblem> problems) =>
        SummaryJson.List(problems, p => new JsonObject { ["line"] = p.Line, ["reason"] = p.Reason });

    public JsonObject Setting(Vehicle car, Setting answer, NextStops? next, string? turnsByGauges)
    {
        var own = car.Measured as OwnMeasurements;
        var node = new JsonObject
        {
            ["car"] = car.Name,
            ["setting"] = SettingJson.Node(answer, units),
            ["chance"] = Chance(answer.Chance),
        };
        if (own is { Stops: { } log, Estimate: { } estimate })
        {
            node["estimate"] = Estimate(estimate);
            node["next_stops"] = NextStops(next);
            node["left_out"] = Problems(log.Problems);
        }

        if (own?.Gauges is { } pairs)
        {
            node["gauges_left_out"] = Problems(pairs.Problems);
        }

        if (own?.Series is { } series)
        {
            node["series"] = Stops(StopFinder.Find(series.Rows));
            node["series_left_out"] = Problems(series.Problems);
        }

        node["turns_by_gauges"] = turnsByGauges;
        return node;
    }

    public JsonObject Gauges(GaugeAnalysis analysis, IEnumerable<LogProblem> leftOut) => new()
    {
        ["positions"] = SummaryJson.List(analysis.Positions, p => new JsonObject
        {
            ["turns"] = SummaryJson.Number(p.Turns),
            ["apply"] = Fit(p.Apply),
            ["release"] = Fit(p.Release),
        }),
        ["slope"] = analysis.Slope is { } slope ? Band(slope) : null,
        [units.Key("hysteresis", units.Pressure)] = analysis.Hysteresis is { } gap ? Band(gap.Select(units.Of)) : null,
        ["held"] = analysis.Held is { } held ? new JsonObject
        {
            [units.Key("creep", units.Pressure) + "_per_min"] = Band(held.Creep.Select(units.Of)),
            [units.Key("front_leak_down", units.Pressure) + "_per_min"] = Band(held.FrontFall.Select(units.Of)),
            [units.Key("rear_leak_down", units.Pressure) + "_per_min"] = Band(held.RearFall.Select(units.Of)),
            ["holds"] = held.Holds,
        } : null,
        ["outside_common_practice"] = SummaryJson.Words(analysis.Properties.Where(p => p.IsOutside).Select(p => p.Name)),
        ["adjuster"] = analysis.Calibration is { } adjuster ? new JsonObject
        {
            [units.Key("knee_per_turn", units.Pressure)] = Band(adjuster.KneePerTurn.Select(units.Of)),
            ["lowest_turns"] = SummaryJson.Number(adjuster.LowestTurns),
            ["highest_turns"] = SummaryJson.Number(adjuster.HighestTurns),
            ["knees"] = SummaryJson.List(Enumerable.Range(0, 5)
                .Select(i => adjuster.LowestTurns + (adjuster.HighestTurns - adjuster.LowestTurns) * i / 4), t => new JsonObject
                {
                    ["turns"] = SummaryJson.Number(t),
                    [units.Key("knee", units.Pressure)] = Band(adjuster.KneeAt(t).Select(units.Of)),
                }),
        } : null,
        ["findings"] = SummaryJson.List(analysis.Findings, f => new JsonObject { ["kind"] = f.Kind.ToString(), ["text"] = f.Text }),
        ["left_out"] = Problems(leftOut),
    };

    public JsonObject Series(StopSearch search, LogReading<MotionSample> log)
    {
        JsonObject node = Stops(search);
        node["columns"] = Columns(log.Columns);
        node["left_out"] = Problems(log.Problems);
        return node;
    }

    private static JsonArray Columns(IEnumerable<LogColumn> columns) => SummaryJson.List(columns, c => new JsonObject
    {
        ["column"] = c.Name,
        ["meaning"] = c.Words,
        ["unit"] = c.Unit,
        ["reason"] = c.Reason,
    });

    private JsonObject Stops(StopSearch search) => new()
    {
        ["samples_per_second_hz"] = SummaryJson.Number(search.SampleRate.Hertz),
        ["stops"] = SummaryJson.List(search.Stops, s => new JsonObject
        {
            ["begins_at_s"] = SummaryJson.Number(s.Start.Seconds),
            ["ends_at_s"] = SummaryJson.Number(s.End.Seconds),
            ["found_by"] = s.FoundBy,
            ["trusted"] = s.IsTrusted,
            ["distance_trusted"] = s.IsDistanceTrusted,
            [units.Key("initial_speed", units.Speed)] = SummaryJson.Number(units.Of(s.InitialSpeed)),
            [units.Key("initial_speed_within", units.Speed)] = SummaryJson.Number(units.Of(s.InitialSpeedWithin)),
            [units.DecelerationKey("mean_fully_developed_deceleration")] = SummaryJson.Number(units.Of(s.Deceleration)),
            ["mean_fully_developed_deceleration_g"] =
                SummaryJson.Number(s.Deceleration?.MetersPerSecondSquared / Gravity.StandardMetresPerSecondSquared),
            [units.DecelerationKey("mean_fully_developed_deceleration_within")] = SummaryJson.Number(units.Of(s.DecelerationWithin)),
            [units.DecelerationKey("peak_deceleration")] = SummaryJson.Number(units.Of(s.Peak)),
            [units.DecelerationKey("peak_deceleration_within")] = SummaryJson.Number(units.Of(s.PeakWithin)),
            ["rise_time_s"] = SummaryJson.Number(s.RiseTime.Seconds),
            ["rise_time_within_s"] = SummaryJson.Number(s.RiseTimeWithin.Seconds),
            [units.Key("distance", units.Distance)] = SummaryJson.Number(units.OfDistance(s.Distance)),
            [units.Key("distance_within", units.Distance)] = SummaryJson.Number(units.OfDistance(s.DistanceWithin)),
            [units.Key("distance_from_pedal", units.Distance)] = SummaryJson.Number(units.OfDistance(s.DistanceFromPedal)),
            [units.Key("distance_from_pedal_within", units.Distance)] = SummaryJson.Number(units.OfDistance(s.DistanceFromPedalWithin)),
            [units.DecelerationKey("offset_removed")] = SummaryJson.Number(units.Of(s.Offset)),
            [units.Key("front_pressure", units.Pressure)] = SummaryJson.Number(units.Of(s.FrontPressure)),
            [units.Key("rear_pressure", units.Pressure)] = SummaryJson.Number(units.Of(s.RearPressure)),
            [units.Key("lock_pressure", units.Pressure)] = SummaryJson.Number(units.Of(s.LockPressure)),
            ["locked_first"] = s.Locked?.ToString().ToLowerInvariant(),
            ["front_locked_at_s"] = SummaryJson.Number(s.FrontLockedAt?.Seconds),
            ["rear_locked_at_s"] = SummaryJson.Number(s.RearLockedAt?.Seconds),
            ["front_slip"] = SummaryJson.Number(s.FrontSlip),
            ["rear_slip"] = SummaryJson.Number(s.RearSlip),
            ["cautions"] = SummaryJson.Words(s.Cautions),
        }),
        ["remarks"] = SummaryJson.Words(search.Remarks),
    };

    private JsonObject Estimate(CarEstimate estimate) => new()
    {
        ["stops_used"] = estimate.StopsUsed,
        ["not_used"] = Problems(estimate.NotUsed),
        ["parameters"] = SummaryJson.List(estimate.Parameters, p => new JsonObject
        {
            ["name"] = p.Name,
            ["unit"] = p.Unit,
            ["before"] = Band(p.Prior),
            ["after"] = Band(p.Posterior),
            ["learnt"] = SummaryJson.Number(p.Learnt),
        }),
        ["weights"] = SummaryJson.List(estimate.Weights, w => new JsonObject
        {
            ["stop"] = w.Number,
            ["line"] = w.Line,
            [units.DecelerationKey("deceleration")] = SummaryJson.Number(units.Of(w.Deceleration)),
            [units.DecelerationKey("foretold")] = SummaryJson.Number(units.Of(w.Foretold)),
            ["deceleration_weight"] = SummaryJson.Number(w.DecelerationWeight),
            ["lock_weight"] = SummaryJson.Number(w.LockWeight),
        }),
        ["correlation"] = SummaryJson.List(estimate.Correlation, row =>
            new JsonArray([.. row.Select(r => (JsonNode?)SummaryJson.Number(r))])),
        ["identifiability"] = SummaryJson.Words(estimate.Identifiability),
        ["deceleration_scatter"] = Band(estimate.DecelerationScatter),
        ["difference_from_chains"] = SummaryJson.Number(estimate.DifferenceFromChains),
        ["chains_agree"] = estimate.ChainsAgree,
    };

    private JsonObject Chance(SettingAnswer answer) => new()
    {
        ["level"] = SummaryJson.Number(answer.Level),
        ["draws"] = answer.Draws,
        ["trade_off"] = SummaryJson.List(answer.TradeOff, Point),
        ["conditions"] = SummaryJson.List(answer.Conditions, c => new JsonObject
        {
            ["load_case"] = c.LoadCase,
            ["surface"] = c.Surface,
            ["brakes"] = c.State,
            [units.Key("worst_speed", units.Speed)] = SummaryJson.Number(units.Of(c.Speed)),
            ["rear_first"] = SummaryJson.Number(c.RearFirst),
            ["mean_efficiency"] = SummaryJson.Number(c.MeanEfficiency),
        }),
    };

    public JsonObject Bands(Vehicle car, IEnumerable<BandedAnswer> answers) =>
        new() { ["car"] = car.Name, ["answers"] = SummaryJson.List(answers, Band) };

    private JsonObject Band(BandedAnswer a) => new()
    {
        ["key"] = a.Measure.In(units.System).Symbol is { Length: > 0 } unit ? units.Key(a.Key, unit) : a.Key,
        ["question"] = a.Question,
        ["unit"] = a.Measure.In(units.System).Symbol,
        ["band"] = Band(a.Band.Select(a.Measure.In(units.System).FromSi)),
        ["answered"] = SummaryJson.Number(a.Answered),
        ["measure_next"] = SummaryJson.List(a.MeasureNext, m => new JsonObject
        {
            ["path"] = m.Path,
            ["what"] = m.What,
            ["how"] = m.How,
            ["range"] = m.Range,
            ["typical_of_class"] = m.IsTypical,
            ["share_alone"] = SummaryJson.Number(m.Alone),
            ["share_with_others"] = SummaryJson.Number(m.InAll),
            ["band_left"] = SummaryJson.Number(m.BandLeft),
        }),
    };

    public static JsonObject Questions(Vehicle car, IEnumerable<QuestionAnswer> answers) => new()
    {
        ["car"] = car.Name,
        ["questions"] = SummaryJson.List(answers, Question),
    };

    private static JsonObject Question(QuestionAnswer a) => new()
    {
        ["number"] = a.Number,
        ["question"] = a.Question,
        ["answer"] = a.Answer,
        ["lacking"] = SummaryJson.Words(a.Lacking),
        ["vague"] = SummaryJson.Words(a.Vague),
        ["more"] = QuestionPointers.Of(a.Number).Words,
    };

    /// <summary>The stop to make next; <see cref="NextStopKeys"/> says what each key means.</summary>
    public JsonObject Next(Vehicle car, NextStops? next, IEnumerable<string> doubts, IEnumerable<LogProblem> leftOut) => new()
    {
        ["car"] = car.Name,
        ["doubts"] = SummaryJson.Words(doubts),
        ["stops_used"] = next?.StopsUsed,
        [units.Key("knee_for_equal_lock_up", units.Pressure)] = next?.Knee is { } knee ? Band(knee.Select(units.Of)) : null,
        ["front_force_share_for_equal_lock_up"] = next?.FrontForceShare is { } share ? Band(share) : null,
        ["highest_chance_of_rear_first"] = SummaryJson.Number(next?.Level),
        ["next_stops"] = NextStops(next),
        ["left_out"] = Problems(leftOut),
    };

    private JsonArray NextStops(NextStops? next) => SummaryJson.List((next?.Candidates ?? []).Take(10), c => new JsonObject
    {
        ["load_case"] = c.Stop.LoadCase,
        ["surface"] = c.Stop.Surface,
        ["turns"] = SummaryJson.Number(c.Stop.Turns),
        [units.Key("speed", units.Speed)] = SummaryJson.Number(units.Of(c.Stop.InitialSpeed!.Value)),
        [units.Key("front_pressure", units.Pressure)] = SummaryJson.Number(units.Of(c.Stop.FrontPressure)),
        ["deceleration_g"] = Band(c.BrakingRate),
        ["lock"] = SummaryJson.Number(c.Lock),
        ["rear_first"] = SummaryJson.Number(c.RearFirst),
        ["interval_left"] = SummaryJson.Number(c.WidthLeft),
        ["abort_if"] = c.AbortIf(units.System),
    });

    public JsonObject Plan(TestPlan plan) => new()
    {
        ["car"] = plan.Car,
        ["cautions"] = SummaryJson.Words(plan.Cautions),
        ["stops"] = SummaryJson.List(plan.Stops, s => new JsonObject
        {
            ["number"] = s.Number,
            ["purpose"] = s.Purpose,
            ["load_case"] = s.LoadCase,
            ["surface"] = s.Surface,
            ["turns"] = SummaryJson.Number(s.Turns),
            [units.Key("speed", units.Speed)] = SummaryJson.Number(units.Of(s.Speed)),
            [units.Key("target_pressure", units.Pressure)] = SummaryJson.Number(units.Of(s.TargetPressure)),
            ["deceleration_g"] = Band(s.BrakingRate),
            ["rear_first"] = SummaryJson.Number(s.RearFirst),
            ["abort_if"] = s.AbortIf(units.System),
        }),
    };

    private JsonObject? Fit(ValveFit? fit) => fit is null ? null : new JsonObject
    {
        [units.Key("knee", units.Pressure)] = fit.Knee is { } knee ? Band(knee.Select(units.Of)) : null,
        ["slope"] = fit.Slope is { } slope ? Band(slope) : null,
        [units.Key("highest_front", units.Pressure)] = SummaryJson.Number(units.Of(fit.HighestFront)),
        [units.Key("scatter", units.Pressure)] = SummaryJson.Number(units.Of(fit.Scatter)),
        ["readings"] = fit.Readings,
        ["weights"] = SummaryJson.List(fit.Weights, w => new JsonObject
        {
            ["line"] = w.Line,
            ["weight"] = SummaryJson.Number(w.Weight),
        }),
        ["lines_left_out"] = new JsonArray([.. fit.LeftOut.Select(line => (JsonNode?)JsonValue.Create(line))]),
    };

    private JsonObject Point(SettingPoint point) => new()
    {
        [units.Key("knee", units.Pressure)] = SummaryJson.Number(units.Of(point.Knee)),
        ["turns"] = SummaryJson.Number(point.Turns),
        ["front_force_share"] = SummaryJson.Number(point.FrontForceShare),
        ["rear_first"] = SummaryJson.Number(point.RearFirst),
        ["worst_rear_first"] = SummaryJson.Number(point.WorstRearFirst),
        ["mean_efficiency"] = SummaryJson.Number(point.MeanEfficiency),
    };

    private static JsonObject Band(Interval<double> band) => new()
    {
        ["estimate"] = SummaryJson.Number(band.Estimate),
        ["low"] = SummaryJson.Number(band.Low),
        ["high"] = SummaryJson.Number(band.High),
    };
}
