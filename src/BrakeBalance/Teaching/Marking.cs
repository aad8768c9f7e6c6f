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

    /// <summary>The right step on a wrong answer to the exercise that it starts from.</summary>
    CarriedForward,

    /// <summary>Wrong, and it cannot be said why.</summary>
    Wrong,

    /// <summary>Not a number with a unit.</summary>
    Unreadable,

    /// <summary>Nothing was written.</summary>
    Blank,
}

/// <summary>One answer as marked.</summary>
/// <param name="Mark">How it was marked.</param>
/// <param name="Points">
/// Points given [–]: all for right, also when carried forward; half for a wrong or missing unit, a sign or a percentage; else none.
/// </param>
/// <param name="Comment">What is off, without giving the answer; empty when right.</param>
public sealed record MarkedAnswer(Mark Mark, double Points, string Comment);

/// <summary>Marks answers: right, or what seems to have gone wrong; never tells the answer.</summary>
public static class Marking
{
    private const double LargestNumber = 1e15;

    private static readonly string[] Percents = ["%", "percent", "per cent", "pct"];

    /// <summary>Marks one answer.</summary>
    /// <param name="exercise">The exercise.</param>
    /// <param name="text">What the student wrote, such as "4520 N" or "0.29".</param>
    /// <param name="us">Whether the sheet leads with US units.</param>
    /// <param name="earlier">
    /// What the student wrote to the exercise that this one starts from (<see cref="Exercise.StartsFrom"/>); null for nothing.
    /// </param>
    /// <param name="decimalSign">The sign by which the student parts decimals; null when that is not known.</param>
    public static MarkedAnswer Check(Exercise exercise, string? text, bool us = false, (Exercise Exercise, string Text)? earlier = null,
        char? decimalSign = null)
    {
        MarkedAnswer marked = Alone(exercise, text, us, decimalSign);
        if (marked.Mark is Mark.Right or Mark.Blank or Mark.Unreadable || exercise.Carried is not { } carried
            || earlier is not ({ } before, { } written) || Alone(before, written, us, decimalSign).Mark is Mark.Right)
        {
            return marked;
        }

        // Judged as if the earlier answer were right; with a slip of unit or sign of its own it earns what that earns.
        (IReadOnlyList<double> numbers, string unit) = AnswerText.Read(written.Trim(), decimalSign);
        foreach (double value in numbers.Select(number => InSi(before.Answer, number, unit, us)).OfType<double>())
        {
            double onward = carried(value);
            if (double.IsFinite(onward) && onward != 0
                && Alone(exercise with { Answer = exercise.Answer.InPlace(onward) }, text, us, decimalSign) is { } again
                && again.Points > marked.Points)
            {
                return again with
                {
                    Mark = Mark.CarriedForward,
                    Comment = $"Right from your answer to {before.Id}, which was not. {again.Comment}".TrimEnd(),
                };
            }
        }

        return marked;
    }

    private static MarkedAnswer Alone(Exercise exercise, string? text, bool us, char? decimalSign)
    {
        ExerciseAnswer answer = exercise.Answer;
        string trimmed = text?.Trim() ?? "";
        if (trimmed.Length == 0)
        {
            return new(Mark.Blank, 0, "No answer.");
        }

        (IReadOnlyList<double> numbers, string unit) = AnswerText.Read(trimmed, decimalSign);
        if (numbers.Count == 0)
        {
            return new(Mark.Unreadable, 0, answer.Quantity is null ? "Not a number." : "Not a number with a unit.");
        }

        // A number that may be meant in two ways is taken in the better one: 5,933 is 5933 to one, 5.933 to another.
        return numbers.Select(number => Math.Abs(number) > LargestNumber ? new(Mark.Unreadable, 0, "No number of a car.")
                : answer.Quantity is null ? Fraction(exercise, number, unit) : Quantity(exercise, number, unit, us))
            .MaxBy(marked => (marked.Points, marked.Mark == Mark.KnownMistake))!;
    }

    // What an answer says, in SI or as a fraction; without a unit it is taken in the sheet's, null where its unit is none of the kind.
    private static double? InSi(ExerciseAnswer answer, double number, string unit, bool us)
    {
        if (answer.QuantityType is not { } type)
        {
            return IsPercent(unit) ? number / 100 : number;
        }

        return (unit.Length == 0 ? answer.LeadUnit(us) : KnownQuantities.Find(type, AnswerText.Unit(unit, type))) is { } known
            ? KnownQuantities.Si(KnownQuantities.From(number, known)) : null;
    }

    private static bool IsPercent(string unit) => Percents.Any(word => unit.StartsWith(word, StringComparison.OrdinalIgnoreCase)
        && (word == "%" || unit.Length == word.Length || !char.IsLetter(unit[word.Length])));

    private static MarkedAnswer Fraction(Exercise exercise, double number, string unit)
    {
        ExerciseAnswer answer = exercise.Answer;
        double value = InSi(answer, number, unit, us: false)!.Value;
        string tight = AnswerText.Tight(unit).ToLowerInvariant();
        return tight is "m/s2" && Near(answer, value / Gravity.StandardMetresPerSecondSquared)
                ? new(Mark.WrongUnit, exercise.Level / 2.0, "Right in m/s²; it was to be in g.")
            : !IsPercent(unit) && tight is not ("" or "g" or "g's" or "gs" or "gn" or "ofg" or "timesg" or "xg"
                or "nounit" or "dimensionless" or "—")
                ? new(Mark.WrongUnit, 0, "This answer has no unit.")
            : Near(answer, value) ? new(Mark.Right, exercise.Level, "")
            : Near(answer, -value) ? new(Mark.SignError, exercise.Level / 2.0, "Look at the sign.")
            : Near(answer, value / 100) ? new(Mark.Percent, exercise.Level / 2.0, "Looks like a percentage written as a fraction.")
            : Known(exercise, value);
    }

    private static MarkedAnswer Quantity(Exercise exercise, double number, string unit, bool us)
    {
        ExerciseAnswer answer = exercise.Answer;
        if (InSi(answer, number, unit, us) is not { } value)
        {
            return AnyUnitFits(answer, number)
                ? new(Mark.WrongUnit, exercise.Level / 2.0, "The number is right in some unit, but not in the one written.")
                : new(Mark.Unreadable, 0, $"\"{unit}\" is not a unit of {QuantityText.Words(answer.QuantityType!.Name)}.");
        }

        bool bare = unit.Length == 0;
        double half = exercise.Level / 2.0;
        MarkedAnswer known = Known(exercise, value);
        return Near(answer, value) ? bare ? new(Mark.UnitMissing, half, "Write the unit.") : new(Mark.Right, exercise.Level, "")
            : Near(answer, -value) ? new(Mark.SignError, half, bare ? "Look at the sign, and write the unit." : "Look at the sign.")
            : known.Mark is Mark.KnownMistake || !AnyUnitFits(answer, number) ? known
            : bare ? new(Mark.UnitMissing, half, "Write the unit: the sheet asks in another.")
            : new(Mark.WrongUnit, half, "The number is right in another unit than the one written.");
    }

    private static MarkedAnswer Known(Exercise exercise, double value) =>
        exercise.Answer.Mistakes.Where(mistake => Math.Abs(value - mistake.Value) <= Slack(exercise.Answer, mistake.Value))
            .Select(mistake => mistake.Name).ToArray() is [_, ..] names
            ? new(Mark.KnownMistake, 0, $"Looks as if {string.Join(", or ", names)}.")
            : new(Mark.Wrong, 0, "Wrong; start again from the sketch.");

    private static bool AnyUnitFits(ExerciseAnswer answer, double number) =>
        AnswerText.UnitsOf(answer.QuantityType!).Any(unit => Near(answer, KnownQuantities.Si(KnownQuantities.From(number, unit))));

    private static bool Near(ExerciseAnswer answer, double value) =>
        Math.Abs(value - answer.RightValue) <= Slack(answer, answer.RightValue);

    private static double Slack(ExerciseAnswer answer, double around) => ExerciseAnswer.Slack(answer.Quantity is null, around);
}
