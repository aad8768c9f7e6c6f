namespace BrakeBalance.Vehicles.Files;

/// <summary>The JSON Schema of vehicle files, made from the same descriptions that the reader uses.</summary>
public static class VehicleSchema
{
    /// <summary>The schema (JSON Schema, draft 2020-12) as text.</summary>
    /// <returns>Indented JSON with a final line break.</returns>
    public static string Text() => DocumentSchema.Text(
        typeof(VehicleDocument), "Vehicle file",
            "One car for the brake balance notebooks; every quantity is a text with its unit, or a range of it.");
}
