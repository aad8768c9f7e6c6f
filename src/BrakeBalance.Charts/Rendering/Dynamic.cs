using System.Collections;
using System.Text.Json.Nodes;

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

    /// <summary>A value of a property as JSON; numbers in their shortest form.</summary>
    /// <exception cref="ArgumentException">The value is of a kind no figure uses.</exception>
    public static JsonNode? Node(object? value) => value switch
    {
        null => null,
        string text => JsonValue.Create(text),
        bool flag => JsonValue.Create(flag),
        int number => JsonValue.Create(number),
        double number => PlainJson.Number(number),
        DynamicObj.DynamicObj properties =>
            new JsonObject(properties.GetProperties(true).Select(p => KeyValuePair.Create(p.Key, Node(p.Value)))),
        IEnumerable items => new JsonArray([.. items.Cast<object?>().Select(Node)]),
        _ => throw new ArgumentException($"A figure has no property of type {value.GetType().Name}.", nameof(value)),
    };
}
