using System.Text.RegularExpressions;
using System.Xml.Linq;
using BrakeBalance.Charts;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>What a reader who edits cells may look up: the summary of each public member of the calculation and its figures.</summary>
internal static partial class MemberSummaries
{
    /// <summary>A line for each: the identifier of its documentation, a tab, its summary.</summary>
    public static string Text() => string.Join('\n', new[] { typeof(Gravity), typeof(Figure) }.SelectMany(Lines));

    private static IEnumerable<string> Lines(Type type)
    {
        ILookup<string, Type> types = type.Assembly.ExportedTypes.ToLookup(one => one.FullName!.Replace('+', '.'), StringComparer.Ordinal);
        string file = Path.ChangeExtension(type.Assembly.Location, ".xml");
        return from member in XDocument.Load(file).Descendants("member")
               let id = member.Attribute("name")!.Value
               where id[0] == 'T' ? types.Contains(id[2..]) : IsPublic(types, id[2..].Split('(')[0])
               let summary = Blanks().Replace(string.Concat(member.Elements("summary").Nodes().Select(Words)), " ").Trim()
               where summary.Length > 0
               select $"{id}\t{summary}";
    }

    private static bool IsPublic(ILookup<string, Type> types, string name)
    {
        int dot = name.LastIndexOf('.');
        return types[name[..dot]].Any(type => type.GetMember(name[(dot + 1)..].Split('`')[0]).Length > 0);
    }

    private static string Words(XNode node) => node switch
    {
        XText text => text.Value,
        XElement { IsEmpty: true } named => named.Attributes().First().Value.Split('(')[0].Split('.', ':')[^1],
        XElement element => string.Concat(element.Nodes().Select(Words)),
        _ => "",
    };

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();
}
