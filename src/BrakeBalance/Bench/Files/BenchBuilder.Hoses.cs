using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Bench.Files;

/// <content>Hoses.</content>
internal sealed partial class BenchBuilder
{
    private HoseJob? Hose(HoseDocument hose, string path)
    {
        int before = _problems.Count;
        HoseRating? rating = Rating(hose, path);
        HoseEnd first = hose.First!, second = hose.Second!;
        Length taken = first.CutOff + second.CutOff + first.Insertion + second.Insertion;
        if (taken >= hose.OverallLength!.Value)
        {
            Add(DocumentReader.Join(path, "overallLength"),
                Invariant.Text(
                    $"{hose.OverallLength.Value.Millimeters:0.#} mm leave no hose: cut-offs and sockets take {taken.Millimeters:0.#} mm."),
                Invariant.Text($"a length above {taken.Millimeters:0.#} mm"));
        }

        if (hose.OutsideDiameter is { } outside && rating?.Bore is { } bore && outside <= bore)
        {
            Add(DocumentReader.Join(path, "outsideDiameter"),
                Invariant.Text($"{outside.Millimeters:0.#} mm is not above the bore of {rating.Name}, {bore.Millimeters:0.#} mm."),
                "the outer diameter, over the cover");
        }

        return _problems.Count > before ? null : new HoseJob(
            new HoseAssembly(
                Name: hose.Name!,
                Rating: rating!,
                First: first,
                Second: second,
                OutsideDiameter: hose.OutsideDiameter,
                RouteLength: hose.RouteLength,
                Routing: hose.Routing is { } way ? Routing(way) : null)
            {
                OverallLength = hose.OverallLength!.Value,
                Orientation = hose.Orientation,
                Clearances = [.. hose.Clearances ?? []],
                Pieces = (int)(hose.Pieces ?? 1),
                Spares = (int)(hose.Spares ?? 0),
            },
            new HoseDuty
            {
                Highest = hose.HighestPressure!.Value,
                Margin = hose.Margin ?? 0.25,
                Hottest = hose.Hottest,
                Side = hose.Side!.Value,
            });
    }

    private HoseRating? Rating(HoseDocument hose, string path)
    {
        if (HoseRating.Find(hose.Class!, hose.Dash ?? "") is { } rating)
        {
            return rating;
        }

        string[] sizes = [.. HoseRating.All.Where(row => string.Equals(row.Class, hose.Class, StringComparison.OrdinalIgnoreCase))
            .Select(row => row.Dash)];
        Add(DocumentReader.Join(path, "dash"), hose.Dash is null ? "is missing." : $"\"{hose.Dash}\" is not in the table for {hose.Class}.",
            sizes is [""] ? "no dash: the class has one rating for all sizes" : string.Join(", ", sizes.Select(size => $"\"{size}\"")));
        return null;
    }

    private static HoseRouting Routing(RoutingDocument way) => new()
    {
        StraightAtFirst = way.StraightAtFirst!.Value,
        StraightAtSecond = way.StraightAtSecond!.Value,
        StraightBetween = way.StraightBetween ?? Length.Zero,
        Bends = [.. way.Bends ?? []],
    };
}
