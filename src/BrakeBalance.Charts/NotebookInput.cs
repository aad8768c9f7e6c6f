namespace BrakeBalance.Charts;

/// <summary>What a notebook is run for: the vehicle file and single values that replace those in it.</summary>
/// <remarks>
/// A notebook cannot be given arguments, so they come through environment variables, which reach every way of running
/// it: the program's own kernel, plain scripting and a Jupyter client.
/// </remarks>
/// <param name="VehiclePath">Full path of the vehicle file.</param>
/// <param name="Overrides">Values by their path in the vehicle file, each written <c>path=value</c>.</param>
public sealed record NotebookInput(string VehiclePath, IReadOnlyList<string> Overrides)
{
    /// <summary>Environment variable with the path of the vehicle file; a relative path counts from the repository's root.</summary>
    public const string VehicleVariable = "BRAKE_BALANCE_VEHICLE";

    /// <summary>Environment variable with the overrides, one a line.</summary>
    public const string OverridesVariable = "BRAKE_BALANCE_SET";

    /// <summary>The invented car the notebooks show when no vehicle file is named; counts from the repository's root.</summary>
    public const string DefaultVehicle = "data/vehicles/coupe-1960s.json";

    /// <summary>The invented car, whatever vehicle file is named.</summary>
    /// <exception cref="DirectoryNotFoundException">No repository was found.</exception>
    public static NotebookInput Example => new(RepositoryRoot.File(DefaultVehicle), []);

    /// <summary>The input of this run, read from the environment at each call.</summary>
    /// <exception cref="DirectoryNotFoundException">A path is relative and no repository was found.</exception>
    public static NotebookInput Current
    {
        get
        {
            string named = Environment.GetEnvironmentVariable(VehicleVariable) is { Length: > 0 } path ? path : DefaultVehicle;
            string overrides = Environment.GetEnvironmentVariable(OverridesVariable) ?? "";
            return new NotebookInput(
                Path.IsPathRooted(named) ? named : RepositoryRoot.File(named),
                overrides.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));
        }
    }

    /// <summary>Whether it is the invented car of the repository, changed values or not.</summary>
    /// <exception cref="DirectoryNotFoundException">No repository was found.</exception>
    public bool IsDefault => Path.GetFullPath(VehiclePath) == Path.GetFullPath(RepositoryRoot.File(DefaultVehicle));

    /// <summary>Whether the vehicle file names logs of gauges and test stops, so that they are the ones shown.</summary>
    public bool HasOwnTests => IsTested(Load());

    /// <summary>Reads the vehicle file with the overrides applied, and the logs that it names.</summary>
    /// <returns>The vehicle, and which of its values are ranges.</returns>
    /// <exception cref="VehicleFileException">The file or an override has problems; all of them are listed.</exception>
    /// <exception cref="FormatException">An override is not <c>path=value</c>.</exception>
    public VehicleReading Load()
    {
        (VehicleReading? reading, IReadOnlyList<string> problems) =
            OwnMeasurements.Attach(VehicleFile.Load(VehiclePath, Overrides.Select(text =>
            ValueOverride.Parse(text) ?? throw new FormatException($"'{text}' is not path=value."))));
        return reading ?? throw new VehicleFileException(
            VehiclePath, [.. problems.Select(problem => new Problem("measurements", problem, "logs that this program reads"))]);
    }

    /// <summary>The text of the vehicle file, with the values that replace its own written into it.</summary>
    /// <returns>The text; comments and layout stay.</returns>
    public string Text() => Overrides.Select(ValueOverride.Parse).OfType<ValueOverride>()
        .Aggregate(File.ReadAllText(VehiclePath), (text, change) => VehicleText.Set(text, change.Path, change.Value));

    /// <summary>The car's own tests, or those of the invented example when its file names no logs of gauges and stops.</summary>
    /// <param name="checkSteps">Steps of the Metropolis chains that check the estimate; 0 for no check.</param>
    /// <returns>The tests, and whose they are, in a sentence.</returns>
    /// <exception cref="VehicleFileException">The file or an override has problems; all of them are listed.</exception>
    /// <exception cref="DirectoryNotFoundException">No repository was found.</exception>
    public (OwnMeasurements Tests, string Whose) Tests(int checkSteps = 0)
    {
        VehicleReading reading = Load();
        bool own = IsTested(reading);
        VehicleReading of = own ? reading : VehicleFile.Load(Example.VehiclePath);
        string Log(string name) => RepositoryRoot.File("data/logs/invented-" + name + ".csv");
        MeasurementLogs logs = own
            ? reading.Logs! with { Series = reading.Logs.Series ?? Log("phone") }
            : new MeasurementLogs(Log("gauges"), Log("stops"), Log("phone"));
        (OwnMeasurements? tests, IReadOnlyList<string> problems) = OwnMeasurements.Read(FileOf(of.Vehicle), logs, true, checkSteps);
        string car = reading.Vehicle.InText;
        return tests is null ? throw new FormatException(string.Join('\n', problems)) : (tests, own
            ? $"These are the tests of {car}, as its file names them."
                + (OwnMeasurements.AreBeforeChange(reading.Vehicle)
                    ? " This page is of the car as its file has it, without the changes asked for." : "")
                + (reading.Logs!.Series is null ? " The phone's log is an invented example." : "")
            : $"Example: {of.Vehicle.Name}, with invented logs."
                + (of.Vehicle.InText == car ? "" : $" The file of {car} names no logs of gauges and test stops (entry "
                + "measurements): of it this page says only which number to measure next and which stops to make."));
    }

    private static bool IsTested(VehicleReading reading) => reading.Logs is { Gauges: not null, Stops: not null };

    // Without what was attached to it while it was read.
    private static Vehicle FileOf(Vehicle vehicle) => (vehicle.Measured as OwnMeasurements)?.File ?? vehicle;

    /// <summary>Makes this the input of the notebooks run from now on in this process and those it starts.</summary>
    public void MakeCurrent()
    {
        Environment.SetEnvironmentVariable(VehicleVariable, VehiclePath);
        Environment.SetEnvironmentVariable(OverridesVariable, string.Join('\n', Overrides));
    }
}
