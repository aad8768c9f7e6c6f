using System.Text;
using System.Text.Json.Nodes;
using BrakeBalance.Charts.Live;
using BrakeBalance.Measurements;
using BrakeBalance.Tests.Vehicles;
using BrakeBalance.Vehicles.Files;
using Xunit.Abstractions;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace BrakeBalance.Charts.Tests.Live;

public class LiveLinkTests(ITestOutputHelper output)
{
    private const string Address = "https://cars.example.org/brakes/your-car.html";

    private static readonly string[] Demos =
        [.. Directory.GetFiles(RepositoryRoot.File("data/vehicles"), "*.json").Order(StringComparer.Ordinal)];

    [Fact]
    public void A_car_comes_back_from_its_words_whole_and_answers_alike()
    {
        foreach (string text in Demos.Select(File.ReadAllText))
        {
            string opened = LiveLink.Opened(LiveLink.Of(text)).Text;
            Assert.True(JsonNode.DeepEquals(DocumentFile.Parse(text).Root, DocumentFile.Parse(opened).Root));
            Assert.Equal(Said(text), Said(opened));
            Assert.Equal(opened, LiveLink.Opened($"{Address}#{LiveLink.Of(text)}\n").Text);
            Assert.Equal(opened, LiveLink.Opened("#" + Uri.EscapeDataString(LiveLink.Of(opened))).Text);
            Assert.Equal(opened, LiveLink.Opened(string.Join("\r\n", LiveLink.Of(text).Chunk(70).Select(part => new string(part)))).Text);
        }
    }

    [Fact]
    public void A_file_that_is_no_JSON_is_handed_on_as_it_is_and_no_other_text_is_taken_for_words()
    {
        Assert.Equal("{ half a file, 78 °", LiveLink.Opened(LiveLink.Of("{ half a file, 78 °")).Text);
        foreach (string text in (string[])["", "{ \"name\": \"#CAR/12\" }", "A CAR/1", "time,speed\n0,1", "#" + new string('x', 100)])
        {
            Assert.Equal(text, LiveLink.Opened(text).Text);
        }
    }

    [Fact]
    public void Words_that_lack_an_end_or_were_changed_hold_no_car()
    {
        string words = LiveLink.Of(File.ReadAllText(Demos[0]));
        foreach (string wrong in (string[])[words[..^1], words[..^7], words[..(words.Length / 2)], "CAR/", "CAR/%", "CAR/:::",
            words.Insert(100, "000"), words[..50] + "ABC" + words[53..]])
        {
            // The last bits may hold nothing of the text.
            if (words.StartsWith(wrong, StringComparison.Ordinal) && wrong.Length == words.Length - 1
                && Record.Exception(() => LiveLink.Opened(wrong)) is null)
            {
                Assert.Equal(LiveLink.Opened(words).Text, LiveLink.Opened(wrong).Text);
                continue;
            }

            Assert.Contains("holds no car", Assert.Throws<ArgumentException>(() => LiveLink.Opened(wrong)).Message,
                StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Words_that_are_about_stay_readable()
    {
        // Written by this program in November 2026. Whoever has such a link must be able to open it: no change may break it.
        const string Words = "CAR/OG412K/CEMVN0XV77GEVDMK8SW7140N:A";
        Assert.Equal("2.60 m", DocumentFile.Parse(LiveLink.Opened(Words).Text).Root!["wheelbase"]!.ToString());
    }

    [Fact]
    public void Every_demo_car_and_200_others_have_a_picture_that_another_program_reads_as_the_link()
    {
        List<int> versions = [];
        foreach ((int i, string text) in Demos.Select(File.ReadAllText).Concat(OrdinaryCar.Measured(200)).Index())
        {
            string link = $"{Address}#{LiveLink.Of(text)}";
            QrCode code = QrCode.Of(link)!;
            versions.Add(code.Version);
            if (i < Demos.Length || i % 10 == 0)
            {
                output.WriteLine($"{(i < Demos.Length ? Path.GetFileName(Demos[i]) : i)}: {text.Length} characters, link {link.Length}, "
                    + $"version {code.Version}, {code.Size} modules");
                Assert.Equal(link, Read(code));
            }
        }

        output.WriteLine($"versions {versions.Min()} to {versions.Max()}, median {versions.Order().ElementAt(versions.Count / 2)}");
        Assert.InRange(versions.Max(), 1, 25);
    }

    [Fact]
    public void Every_version_is_read_by_another_program()
    {
        HashSet<int> seen = [];
        for (int length = 1; length <= 4200; length += length < 700 ? 9 : 45)
        {
            string text = (length % 2 == 0 ? "https://a.example/é#" : "") + string.Concat(Enumerable.Range(0, length).Select(i =>
                "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-/+:$"[(i * i * 7 + i) % 41]));
            QrCode code = QrCode.Of(text)!;
            if (seen.Add(code.Version))
            {
                Assert.Equal(text, Read(code));
            }
        }

        Assert.Equal(40, seen.Count);
        Assert.NotNull(QrCode.Of(new string('A', 4296)));
        Assert.Null(QrCode.Of(new string('A', 4297)));
    }

    [Fact]
    public void A_link_holds_the_logs_that_were_fitted_and_gives_the_same_answer_elsewhere()
    {
        string coupe = File.ReadAllText(Demos[0]);
        JsonObject logs = new()
        {
            ["stops"] = File.ReadAllText(RepositoryRoot.File("data/logs/invented-stops.csv")),
            ["gauges"] = "",
        };
        string link = LiveShare.Of(coupe, logs, Address)["link"]!.ToString();
        JsonNode opened = JsonNode.Parse(new LiveDesk().Answer(new JsonObject { ["do"] = "open", ["text"] = link }.ToJsonString()))!;
        Assert.Equal([KeyValuePair.Create("stops", logs["stops"]!.ToString())],
            opened["logs"]!.AsObject().Select(log => KeyValuePair.Create(log.Key, log.Value!.ToString())));
        Assert.Equal(LiveLink.Opened(LiveLink.Of(coupe)).Text, opened["text"]!.ToString());
    }

    [Fact]
    public void Files_to_save_name_the_logs_that_were_fitted()
    {
        string coupe = File.ReadAllText(Demos[0]);
        JsonNode[] Files(string text, JsonObject? logs) => [.. LiveShare.Files(text, logs)["files"]!.AsArray().Select(file => file!)];
        Assert.Equal(coupe, Assert.Single(Files(coupe, null))["text"]!.ToString());
        foreach (string text in new[]
            {
                coupe, VehicleText.New("rear-wheel-drive saloon"), VehicleText.Set(coupe, "measurements.stops", "../logs/mine.csv"),
            })
        {
            JsonNode[] files = Files(text, new() { ["stops"] = "a log" });
            Assert.Equal(["my-car.json", "stops.csv"], files.Select(file => file["name"]!.ToString()));
            Assert.Equal("a log", files[1]["text"]!.ToString());
            Assert.Equal("stops.csv", DocumentFile.Parse(files[0]["text"]!.ToString()).Root!["measurements"]!["stops"]!.ToString());
        }

        string named = VehicleText.Set(coupe, "measurements.stops", "mine.csv");
        Assert.Equal([("my-car.json", named), ("mine.csv", "a log")],
            Files(named, new() { ["stops"] = "a log" }).Select(file => (file["name"]!.ToString(), file["text"]!.ToString())));
    }

    [Fact]
    public void A_car_too_long_for_a_picture_says_so_and_offers_its_file()
    {
        var random = new Random(3);
        string note = string.Concat(Enumerable.Range(0, 6000).Select(_ => (char)random.Next(35, 91)));
        JsonObject reply = LiveShare.Of($"{{ \"note\": \"{note}\" }}", null, Address);
        Assert.Contains("too long for a picture", reply["html"]!.ToString(), StringComparison.Ordinal);
        Assert.Contains("data-hand-on", reply["html"]!.ToString(), StringComparison.Ordinal);
        string opened = LiveLink.Opened(reply["link"]!.ToString()).Text;
        Assert.Equal(note, DocumentFile.Parse(opened).Root!["note"]!.ToString());
    }

    private static string Said(string text) => SettingWords.Sentence(Setting.Of(VehicleFile.Read(text, "test").Vehicle), UnitSystem.Si);

    private static string? Read(QrCode code)
    {
        const int Scale = 3;
        int side = (code.Size + (2 * QrCode.Quiet)) * Scale;
        byte[] grey = [.. Enumerable.Repeat((byte)255, side * side)];
        for (int y = 0; y < code.Size * Scale; y++)
        {
            for (int x = 0; x < code.Size * Scale; x++)
            {
                grey[((y + (QrCode.Quiet * Scale)) * side) + x + (QrCode.Quiet * Scale)] =
                    code[x / Scale, y / Scale] ? (byte)0 : (byte)255;
            }
        }

        var source = new RGBLuminanceSource(grey, side, side, RGBLuminanceSource.BitmapFormat.Gray8);
        return new QRCodeReader().decode(new BinaryBitmap(new GlobalHistogramBinarizer(source)), new Dictionary<DecodeHintType, object>
        {
            [DecodeHintType.PURE_BARCODE] = true,
            [DecodeHintType.CHARACTER_SET] = Encoding.UTF8.WebName,
        })?.Text;
    }
}
