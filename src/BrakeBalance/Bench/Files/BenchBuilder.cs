using System.Text.Json.Nodes;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Bench.Files;

/// <summary>Makes the bench sheet from a complete document, checking what entries say of one another.</summary>
internal sealed partial class BenchBuilder(Func<string, (string? Text, Problem? Fault)> vehicle)
{
    private readonly List<Problem> _problems = [];

    public IReadOnlyList<Problem> Problems => _problems;

    public BenchSheet? Build(BenchDocument document)
    {
        ImmutableArray<HoseJob> hoses =
            [.. (document.Hoses ?? []).Select((hose, i) => hose is null ? null : Hose(hose, Invariant.Text($"hoses[{i}]")))
            .OfType<HoseJob>()];
        foreach (IGrouping<string, HoseJob> same in hoses.GroupBy(hose => hose.Assembly.Name, StringComparer.OrdinalIgnoreCase)
            .Where(group => group.Count() > 1))
        {
            Add("hoses", $"The name \"{same.Key}\" is used {same.Count()} times.", "a name of its own for each hose");
        }

        PlumbingJob? plumbing = document.Plumbing is { } pipes ? Plumbing(pipes) : null;
        PushRodSheet? rod = document.PushRod is { } readings ? PushRod(readings) : null;
        ChangePlan? change = document.Change is { } parts ? Change(parts) : null;
        if (document.Hoses is null && document.Plumbing is null && document.PushRod is null && document.Change is null)
        {
            Add("", "The file holds nothing to work out.", "at least one of hoses, plumbing, pushRod, change");
        }

        return _problems.Count > 0 ? null : new BenchSheet
        {
            Name = document.Name!,
            Note = document.Note ?? "",
            Hoses = hoses,
            Purchase = document.Purchase ?? new(),
            Plumbing = plumbing,
            PushRod = rod,
            Change = change,
        };
    }

    private PushRodSheet? PushRod(PushRodSheetDocument document)
    {
        const string path = "pushRod";
        int before = _problems.Count;
        bool apart = document.RodLength is not null && document.RodSeatDepth is not null;
        bool half = (document.RodLength is null) != (document.RodSeatDepth is null);
        if (half || apart == (document.RodProjection is not null))
        {
            Add(path, half ? "gives only one of rodLength and rodSeatDepth."
                : apart ? "gives the rod's projection twice."
                : "does not say how far the rod stands out.", "rodProjection, or rodLength together with rodSeatDepth");
            return null;
        }

        Length least = document.LeastGap ?? Length.Zero, greatest = document.GreatestGap ?? Length.FromMillimeters(0.75);
        if (least >= greatest)
        {
            Add(path, Invariant.Text($"wants a gap from {least.Millimeters:0.##} to {greatest.Millimeters:0.##} mm."),
                "leastGap below greatestGap");
        }

        static RepeatedReading? Reading(string name, IReadOnlyList<Length>? readings) => readings is null ? null : new()
        {
            Name = name,
            Readings = [.. readings],
        };
        var sheet = new PushRodSheet
        {
            SeatDepth = Reading("seatDepth", document.SeatDepth)!,
            SpigotHeight = Reading("spigotHeight", document.SpigotHeight),
            RodProjection = Reading("rodProjection", document.RodProjection),
            RodLength = Reading("rodLength", document.RodLength),
            RodSeatDepth = Reading("rodSeatDepth", document.RodSeatDepth),
            Gasket = document.Gasket ?? Length.Zero,
            GaugeError = document.GaugeError ?? Length.FromMillimeters(0.1),
            LeastGap = least,
            GreatestGap = greatest,
        };
        foreach (string fault in sheet.Faults())
        {
            string[] parts = fault.Split(": ", 2);
            Add(DocumentReader.Join(path, parts[0]), parts[1]);
        }

        if (_problems.Count == before)
        {
            Attempt(path, () => _ = sheet.Fit());
        }

        return _problems.Count > before ? null : sheet;
    }

    private ChangePlan? Change(ChangeDocument document)
    {
        const string path = "change";
        (string? text, Problem? fault) = vehicle(document.Vehicle!);
        if (fault is not null)
        {
            Add(DocumentReader.Join(path, "vehicle"), $"\"{document.Vehicle}\": {fault.What}",
                "the path of a vehicle file from this file's folder");
            return null;
        }

        (VehicleReading? before, IReadOnlyList<Problem> oldProblems) = VehicleFile.TryRead(text!);
        if (before is null)
        {
            _problems.AddRange(oldProblems.Select(problem =>
                problem with { Path = $"change.vehicle ({document.Vehicle}) {problem.Path}".TrimEnd() }));
            return null;
        }

        JsonObject merged = PartsMerge.Lay((JsonObject)DocumentFile.Parse(text!).Root!, document.NewParts!);
        (VehicleReading? after, IReadOnlyList<Problem> newProblems) = VehicleFile.TryRead(merged.ToJsonString());
        if (after is null)
        {
            _problems.AddRange(newProblems.Select(problem => problem with { Path = DocumentReader.Join("change.newParts", problem.Path) }));
            return null;
        }

        if (document.LoadCase is { } load)
        {
            Attempt(DocumentReader.Join(path, "loadCase"), () => _ = before.Vehicle.LoadCase(load));
            Attempt(DocumentReader.Join(path, "loadCase"), () => _ = after.Vehicle.LoadCase(load));
        }

        return new ChangePlan
        {
            Before = before.Vehicle,
            After = after.Vehicle,
            Conditions = new ChangeConditions
            {
                LoadCase = document.LoadCase,
                BrakingRate = document.Deceleration ?? 0.8,
                Speed = document.Speed ?? Speed.FromKilometersPerHour(100),
                OldRings = new(document.OldFrontRing, document.OldRearRing),
                NewRings = new(document.NewFrontRing ?? document.OldFrontRing, document.NewRearRing ?? document.OldRearRing),
            },
        };
    }

    private void Attempt(string path, Action action)
    {
        try
        {
            action();
        }
        catch (ArgumentException fault)
        {
            Add(path, fault.Message.ReplaceLineEndings(" "));
        }
    }

    private void Add(string path, string what, string accepted = "") => _problems.Add(new(path, what, accepted));
}
