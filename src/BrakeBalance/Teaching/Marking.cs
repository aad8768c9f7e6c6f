using System.Text.RegularExpressions;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Teaching;

/// <summary>How an answer was marked.</summary>
public enum Mark
{
    /// <summary>Within the tolerance.</summary>
    Right,

    /// <summary>The number would be right in another unit than the one written.</summary>
    WrongUnit,

    /// <summary>The number is right in the sheet's unit, but no unit was written.</summary>
    UnitMissing,

    /// <summary>Right but for the sign.</summary>
    SignError,

    /// <summary>A fraction written as a percentage without the sign for it.</summary>
    Percent,

    /// <summary>A mistake that is known by its result.</summary>
    KnownMistake,

    /// <summary>Wrong, and it cannot be said why.</summary>
    Wrong,

    /// <summary>Not a number with a unit.</summary>
    Unreadable,

    /// <summary>Nothing was written.</summary>
    Blank,
}

/// <summary>One answer as marked.</summary>
/// <param name="Mark">How it was marked.</param>
/// <param name="Points">Points given [–]: all for right, half for a wrong or missing unit, a sign or a percentage, none
/// otherwise.</param>
/// <param name="Comment">What is off, without giving the answer; empty when right.</param>
public sealed record MarkedAnswer(Mark Mark, double Points, string Comment);

/// <summary>Marks answers: right, or what seems to have gone wrong; never tells the answer.</summary>
public static partial class Marking
{
    private const double LargestNumber = 1e15;

    /// <summary>Marks one answer.</summary>
    /// <param name="exercise">The exercise.</param>
    /// <param name="text">What the student wrote, such as "4520 N" or "0.29".</param>
    /// <param name="us">Whether the sheet leads with US units.</param>
    /// <returns>The mark.</returns>
    public static MarkedAnswer Check(Exercise exercise, string? text, bool us = false)
    {
        ExerciseAnswer answer = exercise.Answer;
        string trimmed = text?.Trim() ?? "";
        if (trimmed.Length == 0)
        {
            return new(Mark.Blank, 0, "No answer.");
        }

        Match match = Shape().Match(trimmed);
        if (!match.Success)
        {
            return new(Mark.Unreadable, 0, answer.Quantity is null ? "Not a number." : "Not a number with a unit.");
        }

        double number = double.Parse(match.Groups["number"].Value.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture);
        if (Math.Abs(number) > LargestNumber)
        {
            return new(Mark.Unreadable, 0, "No number of a car.");
        }

        string unit = match.Groups["unit"].Value.Trim();
        return answer.Quantity is null ? Fraction(exercise, number, unit) : Quantity(exercise, number, unit, us);
    }

    private static MarkedAnswer Fraction(Exercise exercise, double number, string unit)
    {
        ExerciseAnswer answer = exercise.Answer;
        double value = unit == "%" ? number / 100 : number;
        return unit is not ("" or "%" or "g" or "-") ? new(Mark.WrongUnit, 0, "This answer has no unit.")
            : Near(answer, value) ? new(Mark.Right, exercise.Level, "")
            : Near(answer, -value) ? new(Mark.SignError, exercise.Level / 2.0, "Look at the sign.")
            : Near(answer, value / 100) ? new(Mark.Percent, exercise.Level / 2.0, "Looks like a percentage written as a fraction.")
            : Known(exercise, value);
    }

    private static MarkedAnswer Quantity(Exercise exercise, double number, string unit, bool us)
    {
        ExerciseAnswer answer = exercise.Answer;
        Type type = answer.QuantityType!;
        if (unit.Length == 0)
        {
            double inLead = ExerciseAnswer.Si(KnownQuantities.From(number, answer.LeadUnit(us)));
            return Near(answer, inLead) ? new(Mark.UnitMissing, exercise.Level / 2.0, "Write the unit.")
                : Near(answer, -inLead) ? new(Mark.SignError, exercise.Level / 2.0, "Look at the sign, and write the unit.")
                : Known(exercise, inLead);
        }

        string readable = (type, unit) switch
        {
            (Type t, "K" or "°C" or "C") when t == typeof(TemperatureDelta) => "∆°C",
            (Type t, "°F" or "F") when t == typeof(TemperatureDelta) => "∆°F",
            (Type t, "hp") when t == typeof(Power) => "hp(I)",
            _ => unit,
        };
        string written = number.ToString("R", CultureInfo.InvariantCulture) + " " + readable;
        if (QuantityText.Read(written, type, out IQuantity? quantity, out _) is not null)
        {
            return AnyUnitFits(answer, number)
                ? new(Mark.WrongUnit, exercise.Level / 2.0, "The number is right in some unit, but not in the one written.")
                : new(Mark.Unreadable, 0, $"\"{unit}\" is not a unit of {QuantityText.Words(type.Name)}.");
        }

        double value = ExerciseAnswer.Si(quantity!);
        return Near(answer, value) ? new(Mark.Right, exercise.Level, "")
            : Near(answer, -value) ? new(Mark.SignError, exercise.Level / 2.0, "Look at the sign.")
            : Known(exercise, value) is { Mark: Mark.KnownMistake } known ? known
            : AnyUnitFits(answer, number)
                ? new(Mark.WrongUnit, exercise.Level / 2.0, "The number is right in another unit than the one written.")
            : new(Mark.Wrong, 0, "Wrong; start again from the sketch.");
    }

    private static MarkedAnswer Known(Exercise exercise, double value) =>
        exercise.Answer.Mistakes.FirstOrDefault(mistake => Math.Abs(value - mistake.Value) <= Slack(exercise.Answer, mistake.Value))
            is { } mistake
            ? new(Mark.KnownMistake, 0, $"Looks as if {mistake.Name}.")
            : new(Mark.Wrong, 0, "Wrong; start again from the sketch.");

    private static bool AnyUnitFits(ExerciseAnswer answer, double number) =>
        answer.Quantity!.QuantityInfo.UnitInfos.Any(unit => Near(answer, ExerciseAnswer.Si(KnownQuantities.From(number, unit.Value))));

    private static bool Near(ExerciseAnswer answer, double value) =>
        Math.Abs(value - answer.RightValue) <= Slack(answer, answer.RightValue);

    private static double Slack(ExerciseAnswer answer, double around) =>
        answer.Quantity is null ? answer.Tolerance : answer.Tolerance * Math.Abs(around);

    [GeneratedRegex(@"^(?<number>[+-]?([0-9]+([.,][0-9]*)?|[.,][0-9]+)([eE][+-]?[0-9]+)?)\s*(?<unit>[^\d\s].*)?$",
        RegexOptions.ExplicitCapture)]
    private static partial Regex Shape();
}
