namespace BrakeBalance.Measurements;

/// <summary>Factors on what is not known exactly.</summary>
/// <param name="Front">Factor on the front friction [–].</param>
/// <param name="Rear">Factor on the rear friction [–].</param>
/// <param name="Height">Factor on the height of the centre of gravity [–].</param>
internal readonly record struct CarDraw(double Front, double Rear, double Height);
