using System.Collections.Immutable;
using System.Text.Json.Nodes;
using BrakeBalance.Assist;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Bench.Files;

/// <summary>Makes the bench sheet from a complete document, checking what entries say of one another.</summary>
internal sealed class BenchBuilder(string folder)
{
    private static readonly ImmutableArray<(string Name, PlumbingPart Part)> PartNames =
    [
        ("reservoir", PlumbingPart.Reservoir), ("pump", PlumbingPart.Pump), ("pump with reservoir", PlumbingPart.PumpWithReservoir), ("booster", PlumbingPart.Booster),
        ("steering gear", PlumbingPart.SteeringGear), ("cooler", PlumbingPart.Cooler), ("filter", PlumbingPart.Filter), ("tee", PlumbingPart.Tee),
    ];

    private readonly List<Problem> _problems = [];

    public IReadOnlyList<Problem> Problems => _problems;

    public BenchSheet? Build(BenchDocument document)
    {
        ImmutableArray<HoseJob> hoses = [.. (document.Hoses ?? []).Select((hose, i) => Hose(hose, FormattableString.Invariant($"hoses[{i}]"))).OfType<HoseJob>()];
        foreach (IGrouping<string, HoseJob> same in hoses.GroupBy(hose => hose.Assembly.Name, StringComparer.OrdinalIgnoreCase).Where(group => group.Count() > 1))
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
            Purchase = Purchase(document.Purchase),
            Plumbing = plumbing,
            PushRod = rod,
            Change = change,
        };
    }

    private static HosePurchase Purchase(PurchaseDocument? document)
    {
        var made = new HosePurchase();
        made = document?.Kerf is { } kerf ? made with { Kerf = kerf } : made;
        return document?.SoldBy is { } step ? made with { SoldBy = step } : made;
    }

    private HoseJob? Hose(HoseDocument hose, string path)
    {
        int before = _problems.Count;
        HoseRating? rating = Rating(hose, path);
        HoseSide? side = OneOf(hose.Side!, DocumentReader.Join(path, "side"), ("pressure", HoseSide.Pressure), ("return", HoseSide.Return));
        int pieces = Whole(hose.Pieces ?? 1, DocumentReader.Join(path, "pieces"));
        int spares = Whole(hose.Spares ?? 0, DocumentReader.Join(path, "spares"));
        HoseEnd first = End(hose.First!), second = End(hose.Second!);
        Length taken = first.CutOff + second.CutOff + first.Insertion + second.Insertion;
        if (taken >= hose.OverallLength!.Value)
        {
            Add(DocumentReader.Join(path, "overallLength"), FormattableString.Invariant($"{hose.OverallLength.Value.Millimeters:0.#} mm leave no hose: cut-offs and sockets take {taken.Millimeters:0.#} mm."),
                FormattableString.Invariant($"a length above {taken.Millimeters:0.#} mm"));
        }

        if (hose.OutsideDiameter is { } outside && rating?.Bore is { } bore && outside <= bore)
        {
            Add(DocumentReader.Join(path, "outsideDiameter"), FormattableString.Invariant($"{outside.Millimeters:0.#} mm is not above the bore of {rating.Name}, {bore.Millimeters:0.#} mm."), "the outer diameter, over the cover");
        }

        ImmutableArray<HoseClearance> clearances = [.. (hose.Clearances ?? []).Select((room, i) => Clearance(room, FormattableString.Invariant($"{path}.clearances[{i}]"))).OfType<HoseClearance>()];
        return _problems.Count > before ? null : new HoseJob(
            new HoseAssembly
            {
                Name = hose.Name!,
                Rating = rating!,
                OverallLength = hose.OverallLength!.Value,
                First = first,
                Second = second,
                Orientation = hose.Orientation,
                OutsideDiameter = hose.OutsideDiameter,
                RouteLength = hose.RouteLength,
                Routing = hose.Routing is { } way ? Routing(way) : null,
                Clearances = clearances,
                Pieces = pieces,
                Spares = spares,
            },
            new HoseDuty { Highest = hose.HighestPressure!.Value, Margin = hose.Margin ?? 0.25, Hottest = hose.Hottest, Side = side!.Value });
    }

    private HoseRating? Rating(HoseDocument hose, string path)
    {
        if (HoseRating.Find(hose.Class!, hose.Dash ?? "") is { } rating)
        {
            return rating;
        }

        string[] sizes = [.. HoseRating.All.Where(row => string.Equals(row.Class, hose.Class, StringComparison.OrdinalIgnoreCase)).Select(row => row.Dash)];
        if (sizes.Length > 0)
        {
            Add(DocumentReader.Join(path, "dash"), hose.Dash is null ? "is missing." : $"\"{hose.Dash}\" is not in the table for {hose.Class}.",
                sizes is [""] ? "no dash: the class has one rating for all sizes" : string.Join(", ", sizes.Select(size => $"\"{size}\"")));
            return null;
        }

        string[] classes = [.. HoseRating.All.Select(row => row.Class).Distinct()];
        string near = Nearest.Of(hose.Class!, classes) is { } guess ? $" Did you mean \"{guess}\"?" : "";
        Add(DocumentReader.Join(path, "class"), $"\"{hose.Class}\" is not in the table of ratings.{near}", string.Join(", ", classes.Select(name => $"\"{name}\"")));
        return null;
    }

    private static HoseEnd End(HoseEndDocument end) => new()
    {
        Fitting = end.Fitting!,
        CutOff = end.CutOff!.Value,
        Insertion = end.Insertion ?? Length.Zero,
        Bend = end.Bend ?? Angle.Zero,
        WorkingPressure = end.WorkingPressure,
    };

    private static HoseRouting Routing(RoutingDocument way) => new()
    {
        StraightAtFirst = way.StraightAtFirst!.Value,
        StraightAtSecond = way.StraightAtSecond!.Value,
        StraightBetween = way.StraightBetween ?? Length.Zero,
        Bends = [.. (way.Bends ?? []).Select(bend => new HoseBend { Radius = bend.Radius!.Value, Turn = bend.Turn!.Value })],
    };

    private HoseClearance? Clearance(ClearanceDocument room, string path) =>
        OneOf(room.Kind!, DocumentReader.Join(path, "kind"), ("heat", ClearanceKind.Heat), ("moving", ClearanceKind.Moving), ("edge", ClearanceKind.Edge)) is { } kind
            ? new HoseClearance { From = room.From!, Kind = kind, Distance = room.Distance!.Value, Wanted = room.Wanted }
            : null;

    private PlumbingJob? Plumbing(PlumbingDocument document)
    {
        int before = _problems.Count;
        ImmutableArray<PlumbingNode> nodes = [.. document.Parts!.Select((part, i) => Part(part, FormattableString.Invariant($"plumbing.parts[{i}]"))).OfType<PlumbingNode>()];
        var oil = new HydraulicOil();
        oil = document.Oil?.Density is { } density ? oil with { Density = density } : oil;
        oil = document.Oil?.At40Celsius is { } warm ? oil with { At40Celsius = warm } : oil;
        oil = document.Oil?.At100Celsius is { } hot ? oil with { At100Celsius = hot } : oil;
        if (oil.At100Celsius >= oil.At40Celsius)
        {
            Add("plumbing.oil", FormattableString.Invariant($"is not thinner at 100 °C ({oil.At100Celsius.Centistokes:0.#} mm²/s) than at 40 °C ({oil.At40Celsius.Centistokes:0.#} mm²/s)."), "both values from the fluid's data sheet");
        }

        if (_problems.Count > before)
        {
            return null;
        }

        var graph = new PlumbingGraph
        {
            Nodes = nodes,
            ReliefPressure = document.ReliefPressure!.Value,
            Lines = [.. document.Lines!.Select(line => new PlumbingLine
            {
                From = line.From!,
                To = line.To!,
                Bore = line.Bore!.Value,
                Length = line.Length!.Value,
                LossCoefficient = line.LossCoefficient ?? 1.5,
                WorkingPressure = line.WorkingPressure,
            })],
        };
        return new PlumbingJob(
            new ReturnFlow { Plumbing = graph, PumpFlow = document.PumpFlow!.Value, Oil = oil, Temperature = document.OilTemperature!.Value },
            document.Release is { } release ? Release(release, document) : null);
    }

    private static ReleaseJob Release(ReleaseDocument release, PlumbingDocument plumbing) => new(
        new HydraulicBooster
        {
            BoostRatio = 4,
            ReliefPressure = plumbing.ReliefPressure!.Value,
            PumpFlow = plumbing.PumpFlow!.Value,
            PowerPistonDiameter = release.PowerPiston!.Value,
            ReturnSpringForce = release.BoosterSpring!.Value,
        },
        new SingleMasterCylinder
        {
            Bore = release.MasterBore!.Value,
            Stroke = release.RodTravel!.Value,
            ReturnSpringForce = release.MasterSpring ?? Force.FromNewtons(100),
        },
        release.RodTravel.Value,
        release.MakersLimit);

    private PlumbingNode? Part(PlumbingPartDocument part, string path) =>
        OneOf(part.Part!, DocumentReader.Join(path, "part"), [.. PartNames]) is { } kind
            ? new PlumbingNode { Name = part.Name!, Part = kind, Loss = part.Loss ?? Pressure.Zero, LossAt = part.LossAt ?? VolumeFlow.FromLitersPerMinute(8) }
            : null;

    private PushRodSheet? PushRod(PushRodSheetDocument document)
    {
        const string path = "pushRod";
        int before = _problems.Count;
        bool apart = document.RodLength is not null && document.RodSeatDepth is not null;
        bool half = (document.RodLength is null) != (document.RodSeatDepth is null);
        if (half || apart == (document.RodProjection is not null))
        {
            Add(path, half ? "gives only one of rodLength and rodSeatDepth." : apart ? "gives the rod's projection twice." : "does not say how far the rod stands out.", "rodProjection, or rodLength together with rodSeatDepth");
            return null;
        }

        Length least = document.LeastGap ?? Length.Zero, greatest = document.GreatestGap ?? Length.FromMillimeters(0.75);
        if (least >= greatest)
        {
            Add(path, FormattableString.Invariant($"wants a gap from {least.Millimeters:0.##} to {greatest.Millimeters:0.##} mm."), "leastGap below greatestGap");
        }

        static RepeatedReading? Reading(string name, IReadOnlyList<Length>? readings) => readings is null ? null : new() { Name = name, Readings = [.. readings] };
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
        string file = Path.GetFullPath(Path.Combine(folder, document.Vehicle!));
        (string? text, Problem? fault) = DocumentFile.Load(file, "a vehicle file");
        if (fault is not null)
        {
            Add(DocumentReader.Join(path, "vehicle"), $"\"{document.Vehicle}\": {fault.What}", "the path of a vehicle file from this file's folder");
            return null;
        }

        (VehicleReading? before, IReadOnlyList<Problem> oldProblems) = VehicleFile.TryRead(text!);
        if (before is null)
        {
            _problems.AddRange(oldProblems.Select(problem => problem with { Path = $"change.vehicle ({document.Vehicle}) {problem.Path}".TrimEnd() }));
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
                BrakingRate = document.BrakingRate ?? 0.8,
                Speed = document.Speed ?? Speed.FromKilometersPerHour(100),
                OldRings = new(document.OldFrontRing, document.OldRearRing),
                NewRings = new(document.NewFrontRing ?? document.OldFrontRing, document.NewRearRing ?? document.OldRearRing),
            },
        };
    }

    private T? OneOf<T>(string text, string path, params IReadOnlyList<(string Name, T Value)> known) where T : struct
    {
        foreach ((string name, T value) in known)
        {
            if (string.Equals(name, text, StringComparison.OrdinalIgnoreCase))
            {
                return value;
            }
        }

        string near = Nearest.Of(text, known.Select(entry => entry.Name)) is { } guess ? $" Did you mean \"{guess}\"?" : "";
        Add(path, $"\"{text}\" is not known.{near}", string.Join(", ", known.Select(entry => $"\"{entry.Name}\"")));
        return null;
    }

    private int Whole(double number, string path)
    {
        if (number != Math.Floor(number))
        {
            Add(path, FormattableString.Invariant($"{number} is not a whole number."), "a whole number");
        }

        return (int)number;
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
