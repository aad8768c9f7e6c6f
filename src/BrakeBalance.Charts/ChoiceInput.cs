using BrakeBalance.Choosing;

namespace BrakeBalance.Charts;

/// <summary>The car and the small list of parts of the notebook on choosing parts.</summary>
/// <param name="Text">The vehicle file, with the values set in place of its own.</param>
/// <param name="Car">The car; it says what lies between foot and line pressure, and how much fluid its circuits displace.</param>
/// <param name="Whose">Which car it is, and why when it is not the one asked for.</param>
/// <param name="List">Parts to choose among, CSV.</param>
public sealed record ChoiceInput(string Text, Vehicle Car, string Whose, string List)
{
    /// <summary>The invented car with a pump-fed booster; counts from the repository's root.</summary>
    public const string Example = "data/vehicles/big-cam-saloon.json";

    // Small, so that the notebook stays quick; invented parts.
    private const string ExampleList =
        """
        part,name,sets,price [money],mass [kg],rating [bar]
        master cylinder,invented tandem,masterCylinder.bore = inch series 7/8 in .. 1-1/8 in,95,1.9,170
        pedal,drilled pedal,pedal.ratio = 3.8 .. 5 step 0.4,40,1.1,
        booster,invented bigger power piston,assist.powerPiston = 38 mm,180,0.9,170
        front caliper,invented bigger piston,"front.brake.pistonDiameters = 60 mm",150,4.9,170
        front pads,invented fast road pad,front.brake.friction = 0.42,70,1.2,
        rear valve,invented one with bypass,"hydraulics.rearValves[0].bypassWhenFrontLost = true;
        """ + " hydraulics.rearValves[0].knee = 13 bar .. 25 bar step 4 bar\",110,0.6,170\n";

    /// <summary>The car asked for, or the invented one when none is named or its file does not go as far as the foot.</summary>
    /// <returns>The car and its list: for a car of the reader's own, invented parts about its sizes.</returns>
    public static ChoiceInput Load()
    {
        NotebookInput input = NotebookInput.Current;
        Vehicle asked = input.Load().Vehicle;
        if (!input.IsDefault && FootInput.Load(input).IsAsked)
        {
            string own = VehicleText.Remove(input.Text(), "measurements");
            return new(own, asked, $"{asked.Name}, with a list of invented parts about its sizes.",
                PartsList.Starter(own, Display.Units == UnitSystem.Us ? UnitSystem.Us : null));
        }

        string file = File.ReadAllText(RepositoryRoot.File(Example));
        Vehicle car = VehicleFile.Read(file, Example).Vehicle;
        string why = input.IsDefault ? "" : $" The file of {asked.InText} does not go as far as the foot and the fluid.";
        return new(file, car, $"Example: {car.Name}. {car.Note}{why}", ExampleList);
    }

    /// <summary>Bores near the present one, as a cylinder is made in; of a balance bar, of its front cylinder.</summary>
    public IReadOnlyList<string> Bores => [.. PartsList.Values("inch series").Where(size =>
        QuantityOption.Read<Length>(size).Value?.Millimeters / Math.Sqrt(Area * 4 / Math.PI) is > 0.8 and < 1.2)];

    /// <summary>The entry that sets the bore.</summary>
    public string BorePath => Car.Control!.MasterCylinder is Hydraulics.TwinMasterCylinders
        ? "hydraulics.split.frontBore" : "masterCylinder.bore";

    private double Area => Car.Control!.MasterCylinder.PistonAreas.Front.SquareMillimeters;

    /// <summary>The balance with other front brakes, in the car's first load case.</summary>
    /// <param name="pistons">Piston diameters over the present ones [–].</param>
    /// <param name="radius">Effective radius over the present one [–].</param>
    public BalanceModel WithFront(double pistons = 1, double radius = 1)
    {
        Brake front = Car.Brakes.Front switch
        {
            DiscBrake disc => disc with { Pistons = PistonSet.OneSide(disc.Pistons.Diameters.Select(one => one * pistons)) },
            DrumBrake drum => drum with { WheelCylinderDiameter = drum.WheelCylinderDiameter * pistons },
            var other => other,
        };
        front = front with { EffectiveRadius = front.EffectiveRadius * radius };
        return new BalanceModel(Car with { Brakes = new(front, Car.Brakes.Rear) }, Car.LoadCases[0]);
    }
}
