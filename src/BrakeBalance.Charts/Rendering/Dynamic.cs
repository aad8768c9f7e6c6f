namespace BrakeBalance.Charts.Rendering;

/// <summary>Objects of named properties, as Plotly.NET serialises them.</summary>
internal static class Dynamic
{
    /// <summary>An object with the given properties.</summary>
    public static DynamicObj.DynamicObj Of(params ReadOnlySpan<(string Name, object? Value)> properties)
    {
        var result = new DynamicObj.DynamicObj();
        foreach ((string name, object? value) in properties)
        {
            if (value is not null)
            {
                result.SetProperty(name, value);
            }
        }

        return result;
    }
}
