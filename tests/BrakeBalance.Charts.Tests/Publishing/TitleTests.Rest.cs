using BrakeBalance.Assist;
using BrakeBalance.Balance;
using BrakeBalance.Bench;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Measurements;
using BrakeBalance.Stops;
using BrakeBalance.Tests;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Charts.Tests.Publishing;

public partial class TitleTests
{
    private static readonly int[] OwnSeeds = [3, 8, 21, 34];

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Presses_with_the_engine_off_are_as_many_as_the_title_says(bool plain)
    {
        HashSet<string> kinds = [];
        Each("reserve", plain, (car, figure) =>
        {
            const double Rate = 0.5;
            var control = new ControlForce(new BalanceModel(car, car.LoadCases[0]));
            double limit = EngineOffPresses.UsualForce.Newtons;
            double? Needed(BrakeAssist assist) =>
                new ControlForce(control.Model, control.Control with { Assist = assist }).AtRate(Rate)?.PedalForce.Newtons;
            int count = 0;
            foreach (ReserveApplication press in FailureAnalysis.Reserve(control, new FailureConditions { BrakingRate = Rate }, 60))
            {
                if (!(Needed(press.Assist) <= limit))
                {
                    break;
                }

                count++;
            }

            double[] numbers = Numbers(figure.Title);
            Assert.Contains(numbers, number => Math.Abs(number - limit) < 6);
            bool never = Needed(control.Control.Assist.WithoutEnergy()) <= limit;
            kinds.Add(never ? "never" : count == 0 ? "none" : "some");
            Assert.Equal(never, figure.Title.Contains("no more than", StringComparison.Ordinal)
                && figure.Title.Contains("even with", StringComparison.Ordinal));
            Assert.Equal(!never && count == 0, figure.Title.Contains("from the first press on", StringComparison.Ordinal));
            Assert.True(never || count == 0 || numbers[0] == count, $"{figure.Title}: {count}");
        });
        Assert.Equal(3, kinds.Count);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Bores_named_fit_with_some_ratio_and_those_beyond_with_none(bool plain) => Each("bore-ratio", plain, (car, figure) =>
    {
        var model = new BalanceModel(car, car.LoadCases[0]);
        double[] ratios = [.. Enumerable.Range(0, 31).Select(i => 2.5 + (0.15 * i))], numbers = Numbers(figure.Title);
        bool Fits(double millimetres) => ControlChoice.Sweep(model, [Length.FromMillimeters(millimetres)], ratios,
            car.Control!.Assist, new ControlTargets()).Any(choice => choice.Fits);
        if (figure.Title.Contains("no ", StringComparison.Ordinal))
        {
            Assert.All(Enumerable.Range(0, 10), i => Assert.False(Fits(14 + (2 * i)), figure.Title));
            return;
        }

        Assert.True(Fits(numbers[0]) && Fits(numbers[1]), figure.Title);
        Assert.False(numbers[0] > 14.1 && Fits(numbers[0] - 0.5), figure.Title);
        Assert.False(numbers[1] < 33.4 && Fits(numbers[1] + 0.5), figure.Title);
    }, 40);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void What_untrusted_friction_costs_is_the_difference_of_two_limits(bool plain) => Each("safe-limits", plain, (car, figure) =>
    {
        Conditions coarse = car.Conditions with { AdhesionSteps = 16 };
        Pressure? Limit(double spread, double slope) =>
            SettingSearch.Limit(car, coarse with { FrictionSpread = new(spread, spread) }, slope).Knee;
        double[] numbers = Numbers(figure.Title);
        if (!figure.Title.Contains('%', StringComparison.Ordinal))
        {
            Assert.True(Enumerable.Range(0, 9).All(i => Limit(0.15, 0.1 * i) is null && Limit(0.08, 0.1 * i) is null)
                || Enumerable.Range(0, 9).All(i => Limit(0, 0.1 * i) is null || Limit(0.15, 0.1 * i) is null), figure.Title);
            return;
        }

        double wide = numbers.First(n => n is 15 or 8);
        double?[] lost = [.. Enumerable.Range(0, 9).Select(i => (Limit(0, 0.1 * i) - Limit(wide / 100, 0.1 * i))?.Bars)];
        if (!plain)
        {
            lost = [lost[(int)Math.Round(10 * numbers[^1])]]; // at the slope named last
        }

        Assert.Contains(lost, bars => bars is not null && numbers.Any(number => Near(number, bars.Value, 0.56)));
    }, 40);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Heat_is_as_hot_as_the_trace_and_boils_when_it_does(bool plain)
    {
        HashSet<string> kinds = [];
        foreach (string name in (string[])["heat-stops", "heat-time"])
        {
            Each(name, plain, (car, figure) =>
            {
                HeatResult heat = new CarStudy(car).Heat.Result;
                double front = heat.Stops.Max(s => s.RingAtEnd.Front.DegreesCelsius); // a ring is hottest as its stop ends
                double rear = heat.Stops.Max(s => s.RingAtEnd.Rear.DegreesCelsius);
                string title = figure.Title;
                Assert.Contains((front >= rear ? "front" : "rear") + " brakes reach", title, StringComparison.OrdinalIgnoreCase);
                Assert.True(Numbers(title).Any(number => Near(number, Math.Max(front, rear), 0.51)), $"{title}: {front}, {rear}");
                double wet = heat.Fluid.WetBoilingPoint.DegreesCelsius;
                int boils = heat.Stops.Select(s => Math.Max(s.FluidAtEnd.Front.DegreesCelsius, s.FluidAtEnd.Rear.DegreesCelsius))
                    .TakeWhile(fluid => fluid <= wet).Count();
                bool ever = heat.Trace.Max(s => Math.Max(s.FluidCelsius.Front, s.FluidCelsius.Rear)) > wet;
                kinds.Add(boils < heat.Stops.Count ? "stop" : ever ? "later" : "never");
                Assert.Equal(boils < heat.Stops.Count, title.Contains("old fluid boils in stop", StringComparison.OrdinalIgnoreCase));
                Assert.True(boils == heat.Stops.Count || Numbers(title).Contains(boils + 1), title);
                Assert.True(boils < heat.Stops.Count || ever != (title.Contains("not boil", StringComparison.Ordinal)
                    || title.Contains("below its wet boiling point", StringComparison.Ordinal)), title);
            }, 60);
        }

        Assert.True(kinds.Count >= 2, string.Join(", ", kinds));
        Each("heat-drift", plain, (car, figure) =>
        {
            double[] shares = [.. new CarStudy(car).Heat.Result.Stops.Select(stop => stop.FrontShare).OfType<double>()];
            double[] numbers = Numbers(figure.Title);
            Assert.InRange(numbers[0], 100 * shares[0] - 0.51, 100 * shares[0] + 0.51);
            Assert.InRange(numbers[^1], 100 * shares[^1] - 0.51, 100 * shares[^1] + 0.51);
        }, 60);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_half_turn_of_hose_is_pi_times_its_least_radius(bool plain)
    {
        Figure figure = Shown("hose-bends", plain, new CarStudy(Cars.Load("coupe-1960s")))!;
        double[] halves = [.. HoseRating.All
            .Where(one => one is { Class: "EN 853 1SN", LeastBendRadius: not null, Bore.Millimeters: >= 6 and <= 20 })
            .Select(one => Math.PI * one.LeastBendRadius!.Value.Millimeters)];
        double[] numbers = Numbers(figure.Title);
        Assert.True(numbers.Any(number => Near(number, halves.Min(), 0.51)) && numbers.Any(number => Near(number, halves.Max(), 0.51)),
            $"{figure.Title}: {string.Join(' ', halves)}");
    }

    /// <summary>A fit of a day costs a second, so four days are tried.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Figures_of_own_logs_say_what_the_logs_hold(bool plain) => Assert.All(OwnSeeds, seed =>
    {
        using OwnCar folder = OwnCar.Measured(seed);
        Vehicle car = OwnMeasurements.Read(OwnCar.Plain, new(folder.At("gauges.csv"), folder.At("stops.csv"), null)).Own!.Attached();
        var study = new CarStudy(car);
        double[] knees = [.. study.Own!.Valve!.Positions.Select(p => p.Apply!.Knee!.Value.Estimate.Bars)];
        double[] read = Numbers(Shown("gauge-readings", plain, study)!.Title);
        Assert.True(Near(read[0], knees.Min(), 0.51) && Near(read[^1], knees.Max(), 0.51));
        double perTurn = Numbers(Shown("knee-against-turns", plain, study)!.Title)[0];
        Assert.True(Near(perTurn, 8, 1.5), $"{perTurn}"); // as the invented day's valve truly moves

        string load = car.LoadCases[0].Name;
        TestStop[] stops = [.. study.Own.Stops!.Rows.Where(stop => stop.LoadCase == load)];
        string locks = Shown("lock-events", plain, study)!.Title;
        int Locked(FirstLock which) => stops.Count(stop => stop.Locked == which);
        int rear = Locked(FirstLock.Rear) + Locked(FirstLock.Together), front = Locked(FirstLock.Front);
        double[] numbers = Numbers(locks);
        Assert.Contains(stops.Length, numbers);
        Assert.True(plain ? numbers[1] == front && numbers[2] == rear : numbers.Contains(rear > 0 ? rear : front), locks);

        TestStop[] rolling = [.. stops.Where(stop => stop.Locked == FirstLock.None)];
        string rates = Shown("measured-rates", plain, study)!.Title;
        double worst = rolling.Max(stop => Math.Abs(stop.Deceleration!.Value.StandardGravity
            / study.Own.Estimate!.Forecast(stop)!.BrakingRate.Estimate - 1));
        Assert.True(plain ? Numbers(rates)[0] == rolling.Length
                && Near(Numbers(rates)[1], rolling.Max(stop => stop.Deceleration!.Value.StandardGravity), 0.006)
            : Near(Numbers(rates)[0], 100 * worst, 0.51), rates);

        if (study.Answer is { Rule: SettingRule.Chance, Recommended: { } set } answer)
        {
            string trade = Shown("setting-trade-off", plain, study)!.Title;
            SettingValue said = plain ? set : answer.SafeLimit!;
            Assert.Contains(SettingWords.Number(said, UnitSystem.Si), trade, StringComparison.Ordinal);
            Assert.True(answer.Chance.TradeOff.Where(point => point.Knee <= said.Knee)
                .All(point => point.WorstRearFirst <= answer.Conditions.RearFirstChance + 0.005), trade);
        }
    });

    private static Figure? Shown(string name, bool plain, CarStudy study)
    {
        CatalogueEntry entry = FigureCatalogue.All.Single(one => one.Name == name);
        return entry.Make(study, UnitSystem.Si) is not { } figure ? null : plain ? entry.Plain.Of(figure, study) : figure;
    }

    private static bool Near(double number, double other, double by) => Math.Abs(number - other) <= by;
}
