using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Figures;

namespace BrakeBalance.Charts.Publishing;

/// <summary>The screens of the story "What the knee does": a figure to move each, in plain words.</summary>
public static class KneeStory
{
    private const int KneeCount = 41;

    /// <summary>Slopes of the story [–]; 1 is a car without the valve.</summary>
    public static IReadOnlyList<double> Slopes { get; } = [0, 0.3, 0.6, 1];

    /// <summary>The screens for a car, in their order; the metering valve has one only where there is such a valve.</summary>
    /// <param name="vehicle">The car.</param>
    /// <returns>Their names.</returns>
    public static IReadOnlyList<string> Screens(Vehicle vehicle) =>
        ["stop", "above", "split", "straight", "knee", .. StoryFigures.HoldsFront(vehicle) ? ["metering"] : (string[])[], "all"];

    /// <summary>A screen of the story.</summary>
    /// <param name="screen">Its name, of <see cref="Screens"/>.</param>
    /// <param name="vehicle">The car.</param>
    /// <param name="answer">The answer for the car, asked for by the screens that need it.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">Its short name; null for one after the screen.</param>
    /// <exception cref="ArgumentException">There is no such screen.</exception>
    public static Explorable Of(
        string screen, Vehicle vehicle, Func<Setting> answer, UnitSystem? units = null, string? id = null)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        UnitSystem shown = units ?? Display.Units;
        var screens = new StoryScreens(vehicle, answer, shown, id ?? $"story-{screen}");
        Explorable explorable = screen switch
        {
            "stop" => screens.Stop(),
            "above" => screens.Above(),
            "split" => screens.Split(),
            "straight" => screens.Straight(),
            "knee" => screens.Knee(),
            "metering" => screens.Metering(),
            "all" => screens.All(),
            _ => throw new ArgumentException($"The story has no screen \"{screen}\".", nameof(screen)),
        };
        return explorable.AgainFrom(vehicle, "story", shown, ("screen", screen));
    }

    /// <summary>The slopes of the story for a car: its own in place of the nearest.</summary>
    /// <param name="setting">The answer for the car.</param>
    /// <returns>Them, rising, and the place of its own.</returns>
    public static (IReadOnlyList<double> Slopes, int Start) SlopesOf(Setting setting)
    {
        ArgumentNullException.ThrowIfNull(setting);
        double[] slopes = [.. Slopes];
        int start = SettingChoices.Put(slopes, setting.Middle.Slope ?? SettingSearch.AddedSlope, recommended: null);
        return (slopes, start);
    }

    /// <summary>The knees of the story and the place of the one at the start; gauge.</summary>
    /// <param name="setting">The answer for the car.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>Them, rising.</returns>
    public static (IReadOnlyList<Pressure> Knees, int Start) Knees(Setting setting, UnitSystem units) =>
        SettingChoices.Knees(setting, KneeCount, units);

    /// <summary>Which wheels lock first and when, as a clause.</summary>
    /// <param name="lockUp">The first lock-up; null when no wheel locks.</param>
    /// <returns>Such as "the front wheels lock first, at 0.83 g".</returns>
    public static string Words(LockUp? lockUp) => lockUp is null
        ? "no wheel locks" : $"{FigureCatalogue.Wheels(lockUp.First)}, at {Finding.Rate(lockUp.At.BrakingRate)} g";

    /// <summary>The pressure that the valve keeps from the rear brakes.</summary>
    /// <param name="with">The car with it.</param>
    /// <param name="without">The car without it.</param>
    /// <param name="at">A moment of the car with it.</param>
    /// <returns>The pressure, gauge; zero below the knee.</returns>
    public static Pressure HeldBack(BalanceModel with, BalanceModel without, BalancePoint at)
    {
        ArgumentNullException.ThrowIfNull(with);
        ArgumentNullException.ThrowIfNull(without);
        ArgumentNullException.ThrowIfNull(at);
        Pressure held = without.At(at.MasterPressure).LinePressures.Rear - with.At(at.MasterPressure).LinePressures.Rear;
        return held > Pressure.FromPascals(1) ? held : Pressure.Zero;
    }
}
