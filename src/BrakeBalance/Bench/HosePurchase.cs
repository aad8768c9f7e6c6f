namespace BrakeBalance.Bench;

/// <summary>How much hose to buy for a set of assemblies.</summary>
/// <remarks>
/// Every piece is one cut off the stock; one more cut squares the stock's end: kerf × (pieces + 1) for each class and size. The sum is
/// rounded up to the step in which hose is sold. Source: arithmetic.
/// </remarks>
public sealed record HosePurchase
{
    /// <summary>Width that each cut turns into dust; 0 to 10 mm; 3 mm unless said (common practice, an abrasive wheel).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 10 mm.</exception>
    [Field("Width that each cut takes; 3 mm when left out", Low = "0 mm", High = "10 mm", Example = "3 mm",
        HowToMeasure = "Thickness of the saw blade or cutting disc")]
    public Length Kerf
    {
        get;
        init => field = Require.Between(value, Length.Zero, Length.FromMillimeters(10));
    } = Length.FromMillimeters(3);

    /// <summary>Step in which hose is sold; 1 mm to 10 m; 0.1 m unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 1 mm to 10 m.</exception>
    [Field("Step in which the hose is sold; 0.1 m when left out", Low = "1 mm", High = "10 m", Example = "1 ft",
        HowToMeasure = "The shop's price list")]
    public Length SoldBy
    {
        get;
        init => field = Require.Between(value, Length.FromMillimeters(1), Length.FromMeters(10));
    } = Length.FromMeters(0.1);

    /// <summary>The list of hose to buy.</summary>
    /// <param name="hoses">The assemblies; each of a cut length above zero.</param>
    /// <returns>One line for each class and size, in the order in which they first appear.</returns>
    public ImmutableArray<HosePurchaseLine> For(IEnumerable<HoseAssembly> hoses) =>
        [.. hoses.GroupBy(hose => hose.Rating.Name).Select(group => Line(group.First().Rating, [.. group]))];

    private HosePurchaseLine Line(HoseRating rating, IReadOnlyList<HoseAssembly> hoses)
    {
        int pieces = hoses.Sum(hose => hose.Pieces);
        int spares = hoses.Sum(hose => hose.Spares);
        double net = hoses.Sum(hose => hose.CutLength.Meters * hose.Pieces);
        double spare = hoses.Sum(hose => hose.CutLength.Meters * hose.Spares);
        double kerf = Kerf.Meters * (pieces + spares + 1);
        double total = net + spare + kerf;

        // A sum that lies on a step must not be pushed to the next one by the last bit of its double.
        double steps = Math.Ceiling((total / SoldBy.Meters) - 1e-9);
        return new(rating, pieces, spares, Length.FromMeters(net), Length.FromMeters(spare), Length.FromMeters(kerf),
            Length.FromMeters(steps * SoldBy.Meters));
    }
}

/// <summary>One class and size of hose to buy.</summary>
/// <param name="Rating">Class and size.</param>
/// <param name="Pieces">Assemblies that go into the car.</param>
/// <param name="Spares">Assemblies to keep.</param>
/// <param name="Net">Cut lengths of the pieces.</param>
/// <param name="Spare">Cut lengths of the spares.</param>
/// <param name="Kerf">What the cuts take.</param>
/// <param name="ToBuy">All of it, rounded up to the step in which it is sold.</param>
public sealed record HosePurchaseLine(HoseRating Rating, int Pieces, int Spares, Length Net, Length Spare, Length Kerf, Length ToBuy);
