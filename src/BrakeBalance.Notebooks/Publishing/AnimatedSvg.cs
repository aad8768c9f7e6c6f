using System.Xml.Linq;
using BrakeBalance.Charts.Publishing;

namespace BrakeBalance.Notebooks.Publishing;

/// <summary>Pictures of a moving figure as one drawing without script, in which what they share stands once.</summary>
/// <remarks>
/// Style rules show each part while its pictures last. They hold only for readers who have not asked for less motion; the others, and
/// programs that know no such rules, see the picture at the start.
/// </remarks>
internal sealed class AnimatedSvg(MovingDrawing moving, string name)
{
    private const int Rest = 8;
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private readonly MovingDrawing _moving = moving;
    private readonly Dictionary<string, string> _classes = [];
    private readonly string _name = name;

    public static string Of(MovingDrawing moving)
    {
        XElement[] pictures = [.. moving.Drawings.Select(XElement.Parse)];
        var own = new AnimatedSvg(moving, $"m-{(string)pictures[0].Attribute("id")!}");
        XElement root = own.Shared(pictures, [.. Enumerable.Range(0, pictures.Length)]);
        root.Descendants(Svg + "rect").First().AddBeforeSelf(new XElement(Svg + "style", own.Rules()));
        HashSet<string> seen = [];
        root.DescendantsAndSelf().Attributes("id").Where(id => !seen.Add(id.Value)).ToArray().Remove();
        return root.ToString(SaveOptions.DisableFormatting) + "\n";
    }

    // Elements that differ only inside, as one element.
    private XElement Shared(XElement[] elements, int[] when)
    {
        XElement first = elements[0];
        if (elements.Skip(1).All(one => XNode.DeepEquals(one, first)))
        {
            return new XElement(first);
        }

        var shared = new XElement(first.Name, first.Attributes());
        var at = new List<(string Key, Dictionary<int, XElement> By)>();
        foreach ((XElement element, int picture) in elements.Zip(when))
        {
            int place = 0;
            foreach (XElement child in element.Elements())
            {
                string key = Key(child);
                int found = at.FindIndex(one => one.Key == key && !one.By.ContainsKey(picture));
                if (found < 0)
                {
                    at.Insert(found = Math.Min(place, at.Count), (key, []));
                }

                at[found].By[picture] = child;
                place = found + 1;
            }
        }

        foreach ((_, Dictionary<int, XElement> by) in at)
        {
            int[] pictures = [.. by.Keys];
            XElement child = Shared([.. by.Values], pictures);
            if (pictures.Length < when.Length)
            {
                child.SetAttributeValue("class", Class(pictures));
                child.SetAttributeValue("visibility", pictures.Contains(_moving.Start) ? "visible" : "hidden");
            }

            shared.Add(child);
        }

        return shared;
    }

    // A group is the same group in all pictures while its attributes are; anything else only while it is the same altogether.
    private static string Key(XElement element) => element.Attribute("id") is null || !element.HasElements ? element.ToString()
        : string.Join(' ', element.Attributes().Select(one => one.ToString()).Prepend(element.Name.LocalName));

    private string Class(int[] pictures)
    {
        string when = string.Concat(Enumerable.Range(0, _moving.Drawings.Count).Select(i => pictures.Contains(i) ? '1' : '0'));
        if (!_classes.TryGetValue(when, out string? name))
        {
            _classes[when] = name = Invariant.Text($"{_name}-{_classes.Count}");
        }

        return name;
    }

    private string Rules()
    {
        int count = _moving.Drawings.Count + (_moving.ThereAndBack ? 0 : Rest);
        var rules = new StringBuilder();
        foreach ((string when, string name) in _classes)
        {
            rules.Append(CultureInfo.InvariantCulture, $"@keyframes {name}{{");
            for (int i = 0; i < when.Length; i++)
            {
                if (i == 0 || when[i] != when[i - 1])
                {
                    rules.Append(CultureInfo.InvariantCulture,
                        $"{100.0 * i / count:0.###}%{{visibility:{(when[i] == '1' ? "visible" : "hidden")}}}");
                }
            }

            rules.Append(CultureInfo.InvariantCulture, $"100%{{visibility:{(when[^1] == '1' ? "visible" : "hidden")}}}}}\n");
        }

        string way = _moving.ThereAndBack ? "alternate " : "";
        rules.Append("@media (prefers-reduced-motion:no-preference){\n");
        foreach (string name in _classes.Values)
        {
            rules.Append(CultureInfo.InvariantCulture,
                $".{name}{{animation:{name} {count * _moving.Milliseconds}ms step-end infinite {way}}}\n");
        }

        return rules.Append("}\n").ToString();
    }

    /// <summary>The pictures in the order in which a film shows them.</summary>
    public static IEnumerable<string> Film(MovingDrawing moving) => moving.Drawings.Concat(moving.ThereAndBack
        ? moving.Drawings.Reverse() : Enumerable.Repeat(moving.Drawings[^1], Rest));
}
