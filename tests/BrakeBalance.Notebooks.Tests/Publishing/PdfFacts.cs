using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace BrakeBalance.Notebooks.Tests.Publishing;

/// <summary>What a PDF says of its pages: how many, and how large the first one is.</summary>
/// <remarks>Reads the page objects, which Chromium writes uncompressed (ISO 32000-1, 7.7.3.3: /Type /Page, /MediaBox).</remarks>
internal sealed record PdfFacts(int Pages, double WidthPoints, double HeightPoints)
{
    public static PdfFacts Of(byte[] data)
    {
        string text = Encoding.Latin1.GetString(data);
        Match box = Regex.Match(text, @"/MediaBox\s*\[\s*[\d.]+\s+[\d.]+\s+([\d.]+)\s+([\d.]+)\s*\]");
        Assert.True(box.Success, "no /MediaBox in the PDF");
        return new(Regex.Count(text, @"/Type\s*/Page\b(?!s)"), Number(box.Groups[1].Value), Number(box.Groups[2].Value));

        static double Number(string digits) => double.Parse(digits, CultureInfo.InvariantCulture);
    }
}
