using System.Reflection;
using System.Runtime.CompilerServices;
using System.Xml.Linq;

namespace BrakeBalance.Tests.Conventions;

/// <summary>
/// What every public type of the calculation assembly keeps to, found by reflection and from the generated documentation.
/// </summary>
public class PublicSurfaceTests
{
    private static readonly Assembly Calculation = typeof(Gravity).Assembly;

    /// <remarks>Numbers of the Answers stage are in the unit that their measure names, whichever that is.</remarks>
    private static readonly Type[] PublicTypes =
        [.. Calculation.GetExportedTypes()
        .Where(type => !typeof(Delegate).IsAssignableFrom(type) && type.Namespace != "BrakeBalance.Answers")];

    /// <summary>Units that a name may end in or hold.</summary>
    private static readonly string[] UnitWords =
    [
        "Newton", "Pascal", "Metre", "Meter", "Kilogram", "Second", "Radian", "Degree", "Bar", "Joule", "Watt", "Kelvin", "Hertz",
            "Celsius", "Percent", "Psi", "Turn", "Litre", "Millimetre", "PerSecond",
    ];

    [Fact]
    public void Nothing_public_can_be_changed_after_it_is_made() => Assert.Empty(
        from type in PublicTypes
        where !type.Name.EndsWith("Document", StringComparison.Ordinal)
        from property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly)
        where property.SetMethod is { IsPublic: true } setter && !IsInit(setter)
        select $"{type.FullName}.{property.Name}");

    [Fact]
    public void No_records_text_goes_on_without_end() => Assert.Empty(
        from type in Calculation.GetExportedTypes()
        where type.GetMethod("<Clone>$") is not null
        from property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
        where property.PropertyType == type
        select $"{type.FullName}.{property.Name}");

    [Fact]
    public void No_public_field_is_writable() => Assert.Empty(
        from type in PublicTypes
        where !type.IsEnum
        from field in type.GetFields(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
        where field is { IsInitOnly: false, IsLiteral: false }
        select $"{type.FullName}.{field.Name}");

    [Fact]
    public void Every_bare_number_has_its_unit_in_its_name_or_is_documented_as_dimensionless()
    {
        IReadOnlyDictionary<string, XElement> documentation = Documentation();
        List<string> faults = [];
        int looked = 0;
        foreach (Type type in PublicTypes.Where(type => !type.Name.EndsWith("Document", StringComparison.Ordinal)))
        {
            XElement? aboutType = documentation.GetValueOrDefault("T:" + type.FullName!.Replace('+', '.'));
            foreach (PropertyInfo property in type.GetProperties(
                BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly))
            {
                if (IsBare(property.PropertyType) && !NamesUnit(property.Name))
                {
                    looked++;
                    XElement? own = documentation.GetValueOrDefault(
                        $"P:{property.DeclaringType!.FullName!.Replace('+', '.')}.{property.Name}");
                    XElement? positional = aboutType?.Elements("param")
                        .FirstOrDefault(param => param.Attribute("name")!.Value == property.Name);
                    if (property.GetIndexParameters().Length == 0 && !IsInherited(own) && !IsMarked(own) && !IsMarked(positional))
                    {
                        faults.Add($"{type.FullName}.{property.Name}");
                    }
                }
            }

            foreach (MethodInfo method in type.GetMethods(
                BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly))
            {
                if (method.IsSpecialName || method.GetCustomAttribute<CompilerGeneratedAttribute>() is not null)
                {
                    continue;
                }

                XElement? own = documentation.FirstOrDefault(entry =>
                    (entry.Key == $"M:{type.FullName!.Replace('+', '.')}.{method.Name}"
                        || entry.Key.StartsWith($"M:{type.FullName.Replace('+', '.')}.{method.Name}(", StringComparison.Ordinal)
                        || entry.Key.StartsWith($"M:{type.FullName.Replace('+', '.')}.{method.Name}``", StringComparison.Ordinal))
                    && method.GetParameters()
                        .All(parameter => entry.Value.Elements("param").Any(param => param.Attribute("name")!.Value == parameter.Name))
                    && entry.Value.Elements("param").Count() == method.GetParameters().Length).Value;
                if (own is null)
                {
                    continue;
                }

                foreach (ParameterInfo parameter in method.GetParameters()
                    .Where(parameter => IsBare(parameter.ParameterType) && !NamesUnit(parameter.Name!)))
                {
                    XElement? about = own.Elements("param").FirstOrDefault(param => param.Attribute("name")!.Value == parameter.Name);
                    looked++;
                    if (!IsMarked(about))
                    {
                        faults.Add($"{type.FullName}.{method.Name}({parameter.Name})");
                    }
                }
            }
        }

        Assert.True(looked > 120, $"Only {looked} bare numbers were found: the search itself is at fault.");
        Assert.True(faults.Count == 0, string.Join('\n', faults.Distinct()));
    }

    [Fact]
    public void Calculation_knows_neither_charts_nor_kernel()
    {
        string[] references = [.. Calculation.GetReferencedAssemblies().Select(reference => reference.Name!)];
        Assert.DoesNotContain(references, name => name.Contains("Plotly", StringComparison.OrdinalIgnoreCase)
            || name.Contains("Interactive", StringComparison.OrdinalIgnoreCase) || name.Contains("CodeAnalysis", StringComparison.Ordinal)
            || name.Contains("Spectre", StringComparison.Ordinal) || name.StartsWith("BrakeBalance.", StringComparison.Ordinal));
        Assert.Contains("UnitsNet", references);
    }

    private static bool IsInit(MethodInfo setter) => setter.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit));

    private static bool IsBare(Type type)
    {
        Type plain = Nullable.GetUnderlyingType(type.IsByRef ? type.GetElementType()! : type)
            ?? (type.IsByRef ? type.GetElementType()! : type);
        return plain == typeof(double) || plain == typeof(float);
    }

    private static bool NamesUnit(string name) => UnitWords.Any(unit => name.Contains(unit, StringComparison.OrdinalIgnoreCase));

    private static bool IsMarked(XElement? about) => about is not null && about.Value.Contains("[–]", StringComparison.Ordinal);

    private static bool IsInherited(XElement? about) => about?.Element("inheritdoc") is not null;

    private static Dictionary<string, XElement> Documentation() =>
        XDocument.Load(Path.ChangeExtension(Calculation.Location, ".xml")).Descendants("member")
            .ToDictionary(member => member.Attribute("name")!.Value);
}
