using System.Text.RegularExpressions;

namespace BrakeBalance.Charts;

/// <summary>Puts a <see cref="Figure"/> together.</summary>
/// <param name="id">Its short name: lower-case letters, digits and hyphens.</param>
/// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
/// <param name="car">The car it draws, so that its caption says where ranges were taken at their middle; null for none.</param>
/// <remarks>
/// <para>How to make a figure:</para>
/// <code>
/// Figure figure = new FigureBuilder("rear-pressure", units)
///     .Title("Above the knee the rear pressure rises by a third only")
///     .Describe(
///         caption: "Rear against front line pressure, gauge. Invented car.",
///         description: "Up to 38 bar the rear pressure equals the front pressure; from there on it rises by 0.3 bar a bar.")
///     .X("Front line pressure", "p₁", Measure.LinePressure)
///     .Y("Rear line pressure", "p₂", Measure.LinePressure)
///     .Line("equal pressures", front, front, Tone.Guide, Dash.Dot)
///     .Line("with valve", front, rear, Tone.Rear)
///     .Points("knee", [knee.Pascals], [knee.Pascals])
///     .Table(table => table.Column("Front", Measure.LinePressure, front).Column("Rear", Measure.LinePressure, rear))
///     .Build();
/// </code>
/// <para>A <see cref="Series"/> comes by itself from an array of quantities (<c>Pressure[]</c>, <c>Force[]</c>…) or of SI numbers.
/// Numbers inside a title or caption are written by <see cref="Text(Measure, double)"/>. Labels are placed beside their marks without
/// overlap; a name is the label unless another one is given, and an empty label writes none. Without a call of
/// <see cref="Table(Action{TableBuilder})"/>
/// the table lists the points of all lines and markers.</para>
/// </remarks>
public sealed partial class FigureBuilder(string id, UnitSystem? units = null, Vehicle? car = null)
{
    /// <summary>What a caption says of a car whose file gives ranges.</summary>
    internal const string Middles = "Drawn with each range of the file at its middle.";

    private readonly string _id = id;
    private readonly List<Layer> _layers = [];
    private string _title = "";
    private string _caption = "";
    private string _description = "";
    private Axis? _x;
    private Axis? _y;
    private FigureTable? _table;
    private bool _stacks;
    private bool _toScale, _keyed;

    /// <summary>The system of units of the figure.</summary>
    public UnitSystem Units { get; } = units ?? Display.Units;

    /// <summary>An SI number as running text in display units.</summary>
    /// <param name="measure">Its measure.</param>
    /// <param name="si">The number in SI.</param>
    /// <returns>Such as <c>38.5 bar</c>.</returns>
    public string Text(Measure measure, double si) => measure.Text(si, Units);

    /// <summary>A quantity as running text in display units.</summary>
    /// <param name="measure">Its measure.</param>
    /// <param name="quantity">The quantity.</param>
    /// <returns>Such as <c>38.5 bar</c>.</returns>
    public string Text(Measure measure, UnitsNet.IQuantity quantity) => measure.Text(quantity, Units);

    /// <summary>Sets the title: the finding, not the axes.</summary>
    /// <param name="finding">The finding, one sentence without a full stop.</param>
    public FigureBuilder Title(string finding)
    {
        _title = finding;
        return this;
    }

    /// <summary>Sets what the figure says in words.</summary>
    /// <param name="caption">One or two sentences below the figure.</param>
    /// <param name="description">The figure in a paragraph.</param>
    public FigureBuilder Describe(string caption, string description)
    {
        _caption = caption;
        _description = description;
        return this;
    }

    /// <summary>Sets the axis from left to right.</summary>
    /// <param name="quantity">What it shows, in words.</param>
    /// <param name="symbol">The symbol; may be empty.</param>
    /// <param name="measure">The measure.</param>
    /// <param name="minimum">Lower end in SI; null to fit the data.</param>
    /// <param name="maximum">Upper end in SI; null to fit the data.</param>
    public FigureBuilder X(string quantity, string symbol, Measure measure, double? minimum = null, double? maximum = null)
    {
        _x = new Axis { Quantity = quantity, Symbol = symbol, Measure = measure, Minimum = minimum, Maximum = maximum };
        return this;
    }

    /// <summary>Makes the axis from left to right one of categories, for bars.</summary>
    /// <param name="quantity">What the categories are, in words.</param>
    /// <param name="categories">Their names.</param>
    public FigureBuilder Categories(string quantity, params IEnumerable<string> categories)
    {
        _x = new Axis { Quantity = quantity, Measure = Measure.Count, Categories = [.. categories] };
        return this;
    }

    /// <summary>Sets the axis from bottom to top.</summary>
    /// <param name="quantity">What it shows, in words.</param>
    /// <param name="symbol">The symbol; may be empty.</param>
    /// <param name="measure">The measure.</param>
    /// <param name="minimum">Lower end in SI; null to fit the data.</param>
    /// <param name="maximum">Upper end in SI; null to fit the data.</param>
    public FigureBuilder Y(string quantity, string symbol, Measure measure, double? minimum = null, double? maximum = null)
    {
        _y = new Axis { Quantity = quantity, Symbol = symbol, Measure = measure, Minimum = minimum, Maximum = maximum };
        return this;
    }

    /// <summary>Adds a line.</summary>
    /// <param name="name">What it is; also its label unless <paramref name="label"/> is given.</param>
    /// <param name="x">Abscissae in SI, or quantities.</param>
    /// <param name="y">Ordinates in SI, or quantities.</param>
    /// <param name="tone">What it stands for.</param>
    /// <param name="dash">How it is broken.</param>
    /// <param name="width">Its width in pixels.</param>
    /// <param name="label">The label; null for the name, empty for none.</param>
    /// <param name="labelAt">Where along the line the label would best stand, 0 to 1; null for wherever there is room.</param>
    public FigureBuilder Line(
        string name,
        Series x,
        Series y,
        Tone tone = Tone.Main,
        Dash dash = Dash.Solid,
        double width = 2,
        string? label = null,
        double? labelAt = null)
    {
        SameLength(name, x, y);
        return Add(new LineLayer
        {
            Name = name,
            X = x.Values,
            Y = y.Values,
            Tone = tone,
            Dash = dash,
            Width = width,
            Label = label,
            LabelAt = labelAt,
        });
    }

    /// <summary>Adds a shaded polygon labelled in words.</summary>
    /// <param name="name">What holds there; also its label unless <paramref name="label"/> is given.</param>
    /// <param name="x">Abscissae of the corners.</param>
    /// <param name="y">Ordinates of the corners.</param>
    /// <param name="tone">What it stands for.</param>
    /// <param name="hatch">How it is hatched.</param>
    /// <param name="label">The label; null for the name, empty for none.</param>
    public FigureBuilder Region(string name, Series x, Series y, Tone tone = Tone.Rear, Hatch hatch = Hatch.Rising, string? label = null)
    {
        SameLength(name, x, y);
        return Add(new RegionLayer { Name = name, X = x.Values, Y = y.Values, Tone = tone, Hatch = hatch, Label = label });
    }

    /// <summary>Adds a band of spread or uncertainty.</summary>
    /// <param name="name">What it is; also its label unless <paramref name="label"/> is given.</param>
    /// <param name="x">Abscissae, rising.</param>
    /// <param name="lower">Lower edge.</param>
    /// <param name="upper">Upper edge.</param>
    /// <param name="tone">What it stands for.</param>
    /// <param name="label">The label; null for the name, empty for none.</param>
    public FigureBuilder Band(string name, Series x, Series lower, Series upper, Tone tone = Tone.Guide, string? label = null)
    {
        SameLength(name, x, lower);
        SameLength(name, x, upper);
        return Add(new BandLayer { Name = name, X = x.Values, Lower = lower.Values, Upper = upper.Values, Tone = tone, Label = label });
    }

    /// <summary>Adds single points.</summary>
    /// <param name="name">What they are; also the label unless <paramref name="label"/> or <paramref name="labels"/> is given.</param>
    /// <param name="x">Abscissae.</param>
    /// <param name="y">Ordinates.</param>
    /// <param name="tone">What they stand for.</param>
    /// <param name="shape">Their shape.</param>
    /// <param name="label">One label beside the last point; null for the name, empty for none.</param>
    /// <param name="labels">A label for each point instead.</param>
    /// <param name="error">Half the height of each error bar.</param>
    /// <param name="size">Size in pixels.</param>
    public FigureBuilder Points(
        string name,
        Series x,
        Series y,
        Tone tone = Tone.Main,
        Marker shape = Marker.Circle,
        string? label = null,
        IReadOnlyList<string>? labels = null,
        Series error = default,
        double size = 8)
    {
        SameLength(name, x, y);
        Refuse.If(labels is not null && labels.Count != x.Count,
            $"'{name}' has {x.Count} points and {labels?.Count} labels.", nameof(labels));

        return Add(new MarkerLayer
        {
            Name = name,
            X = x.Values,
            Y = y.Values,
            Tone = tone,
            Shape = shape,
            Label = label,
            PointLabels = labels,
            Size = size,
            YError = error.Count == 0 ? null : error.Values,
        });
    }

    /// <summary>Adds an upright line across the plot.</summary>
    /// <param name="name">What it marks; also its label unless <paramref name="label"/> is given.</param>
    /// <param name="x">Where it stands, in SI.</param>
    /// <param name="tone">What it stands for.</param>
    /// <param name="dash">How it is broken.</param>
    /// <param name="label">The label; null for the name, empty for none.</param>
    public FigureBuilder Upright(string name, double x, Tone tone = Tone.Guide, Dash dash = Dash.Dash, string? label = null) =>
        Add(new ReferenceLayer { Name = name, Vertical = true, Value = x, Tone = tone, Dash = dash, Label = label });

    /// <summary>Adds a level line across the plot.</summary>
    /// <param name="name">What it marks; also its label unless <paramref name="label"/> is given.</param>
    /// <param name="y">Where it lies, in SI.</param>
    /// <param name="tone">What it stands for.</param>
    /// <param name="dash">How it is broken.</param>
    /// <param name="label">The label; null for the name, empty for none.</param>
    public FigureBuilder Level(string name, double y, Tone tone = Tone.Guide, Dash dash = Dash.Dash, string? label = null) =>
        Add(new ReferenceLayer { Name = name, Vertical = false, Value = y, Tone = tone, Dash = dash, Label = label });

    internal bool IsEmpty => _layers.Count == 0;

    /// <summary>Adds a series of bars over the categories.</summary>
    /// <param name="name">What the bars are; also their label.</param>
    /// <param name="values">The height of each category's bar.</param>
    /// <param name="tone">What they stand for.</param>
    /// <param name="hatch">How they are hatched.</param>
    public FigureBuilder Bars(string name, Series values, Tone tone = Tone.Front, Hatch hatch = Hatch.None) =>
        Add(new BarLayer { Name = name, Values = values.Values, Tone = tone, Hatch = hatch });

    /// <summary>Draws a length alike along both axes, as on a plan.</summary>
    public FigureBuilder ToScale()
    {
        _toScale = true;
        return this;
    }

    /// <summary>Lets labels that find no clean place stand in the key below the plot.</summary>
    public FigureBuilder KeyWhereCrowded()
    {
        _keyed = true;
        return this;
    }

    /// <summary>Puts bars that share a category on top of one another.</summary>
    public FigureBuilder StackingBars()
    {
        _stacks = true;
        return this;
    }

    /// <summary>Adds a grid of cells tinted by a value.</summary>
    /// <param name="name">What the values are; named beside the scale.</param>
    /// <param name="x">Abscissae of the cell centres, evenly spaced.</param>
    /// <param name="y">Ordinates of the cell centres, evenly spaced.</param>
    /// <param name="values">The values, row by row from the lowest ordinate; null where there is no answer.</param>
    /// <param name="measure">The measure of the values.</param>
    public FigureBuilder Heat(string name, Series x, Series y, IReadOnlyList<IReadOnlyList<double?>> values, Measure measure)
    {
        SameGrid(name, x, y, values.Count, values.Select(row => row.Count));
        return Add(new HeatLayer { Name = name, X = x.Values, Y = y.Values, Values = values, Measure = measure });
    }

    /// <summary>Adds a grid of cells that each belong to a named class.</summary>
    /// <param name="name">What the map shows.</param>
    /// <param name="x">Abscissae of the cell centres, evenly spaced.</param>
    /// <param name="y">Ordinates of the cell centres, evenly spaced.</param>
    /// <param name="cells">The class of each cell, row by row from the lowest ordinate; -1 for none.</param>
    /// <param name="classes">The classes.</param>
    public FigureBuilder Map(string name, Series x, Series y, IReadOnlyList<IReadOnlyList<int>> cells,
        params IReadOnlyList<MapClass> classes)
    {
        SameGrid(name, x, y, cells.Count, cells.Select(row => row.Count));
        return Add(new MapLayer { Name = name, X = x.Values, Y = y.Values, Cells = cells, Classes = classes });
    }

    /// <summary>Adds a remark at a point.</summary>
    /// <param name="text">The remark.</param>
    /// <param name="x">Abscissa in SI.</param>
    /// <param name="y">Ordinate in SI.</param>
    /// <param name="tone">Its tone.</param>
    public FigureBuilder Note(string text, double x, double y, Tone tone = Tone.Main) =>
        Add(new NoteLayer { Name = text, X = x, Y = y, Tone = tone });

    /// <summary>Adds a layer made elsewhere.</summary>
    /// <param name="layer">The layer.</param>
    public FigureBuilder Add(Layer layer)
    {
        _layers.Add(layer);
        return this;
    }

    /// <summary>Sets the table.</summary>
    /// <param name="columns">Adds the columns.</param>
    public FigureBuilder Table(Action<TableBuilder> columns)
    {
        var builder = new TableBuilder(Units);
        columns(builder);
        return Table(builder.Build());
    }

    /// <summary>Sets a table made elsewhere.</summary>
    /// <param name="table">The table.</param>
    public FigureBuilder Table(FigureTable table)
    {
        _table = table;
        return this;
    }

    /// <summary>The finished figure.</summary>
    /// <exception cref="InvalidOperationException">Something a figure needs is missing; the message says what.</exception>
    public Figure Build()
    {
        Demand(IdPattern().IsMatch(_id), "an id of lower-case letters, digits and hyphens");
        Demand(_title.Length > 0, "a title");
        Demand(_caption.Length > 0, "a caption");
        Demand(_description.Length > 0, "a long description");
        Demand(_x is not null && _y is not null, "both axes");
        Demand(_layers.Count > 0, "at least one layer");
        foreach (BarLayer bars in _layers.OfType<BarLayer>())
        {
            Demand(_x!.Categories?.Count == bars.Values.Count, $"as many categories as '{bars.Name}' has bars");
        }

        return new Figure
        {
            Id = _id,
            Title = _title,
            Caption = car?.Uncertainty is null ? _caption : $"{_caption} {Middles}",
            LongDescription = _description,
            XAxis = _x!,
            YAxis = _y!,
            Layers = [.. _layers],
            Units = Units,
            StacksBars = _stacks,
            IsToScale = _toScale,
            IsKeyedWhereCrowded = _keyed,
            Table = _table ?? AutomaticTable.Of(_x!, _y!, _layers, Units),
        };
    }

    [GeneratedRegex("^[a-z][a-z0-9-]*$")]
    private static partial Regex IdPattern();

    private static void SameLength(string name, Series x, Series y) =>
        Refuse.If(x.Count != y.Count || x.Count == 0,
            $"'{name}' needs as many ordinates as abscissae, and at least one; it has {x.Count} and {y.Count}.");

    private static void SameGrid(string name, Series x, Series y, int rows, IEnumerable<int> widths) =>
        Refuse.If(rows != y.Count || widths.Any(width => width != x.Count),
            $"The grid '{name}' needs {y.Count} rows of {x.Count} cells, one row an ordinate.");

    private void Demand(bool holds, string what)
    {
        if (!holds)
        {
            throw new InvalidOperationException($"The figure '{_id}' needs {what}.");
        }
    }
}
