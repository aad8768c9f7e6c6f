using System.IO.Compression;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using BrakeBalance.Balance;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Tests.Commands;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Notebooks.Tests.Packaging;

[Trait("Category", "Packages")]
public sealed partial class PackageTests(PackageFeed packages) : IClassFixture<PackageFeed>
{
    [Theory]
    [InlineData("BrakeBalance", "lib/net10.0/BrakeBalance")]
    [InlineData("BrakeBalance.Tool", "tools/net10.0/any/BrakeBalance.Notebooks")]
    public void A_package_holds_assembly_documentation_readme_licence_and_its_symbols_lie_beside(string id, string assembly)
    {
        using ZipArchive package = ZipFile.OpenRead(packages.Package(id, "nupkg"));
        string[] names = [.. package.Entries.Select(entry => entry.FullName)];
        Assert.All((string[])[assembly + ".dll", assembly + ".xml", "README.md", "LICENSE"], name => Assert.Contains(name, names));
        XElement metadata = XDocument.Parse(Text(package, id + ".nuspec")).Root!.Elements().Single();
        string Of(string name) => metadata.Elements().Single(element => element.Name.LocalName == name).Value;
        Assert.Equal((PackageFeed.Version, "MIT", "README.md"), (Of("version"), Of("license"), Of("readme")));
        using ZipArchive symbols = ZipFile.OpenRead(packages.Package(id, "snupkg"));
        Assert.Contains(assembly + ".pdb", symbols.Entries.Select(entry => entry.FullName));
    }

    [Fact]
    public void The_package_documents_what_it_offers()
    {
        using ZipArchive package = ZipFile.OpenRead(packages.Package("BrakeBalance", "nupkg"));
        string documentation = Text(package, "lib/net10.0/BrakeBalance.xml");
        Assert.Contains("<member name=\"M:BrakeBalance.Balance.BalanceModel.FirstLockUp", documentation, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_installed_tool_answers_as_the_program_of_the_repository()
    {
        string car = await StarterAsync();
        Assert.Equal(await Shell.RunAsync("summary", car), await packages.ToolAsync("summary", "car.json"));
        Assert.Equal(await Shell.RunAsync("measure", "questions", car), await packages.ToolAsync("measure", "questions", "car.json"));
        Assert.StartsWith(PackageFeed.Version, (await packages.ToolAsync("--version")).Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("render")]
    [InlineData("render", "--vehicle", "car.json")]
    [InlineData("story")]
    [InlineData("measure", "invent", "logs")]
    [InlineData("notebooks", "verify")]
    public async Task What_needs_the_repository_says_so_and_writes_nothing(params string[] words)
    {
        await StarterAsync();
        string[] before = Directory.GetFileSystemEntries(packages.Work);
        (int code, string output, string error) = await packages.ToolAsync(words);
        Assert.Equal((ExitCode.BadInput, ""), (code, output));
        Assert.Contains("clone of the repository", error, StringComparison.Ordinal);
        Assert.Equal(before, Directory.GetFileSystemEntries(packages.Work));
    }

    [Theory]
    [InlineData("stops", "car.json")]
    [InlineData("measure", "setting", "car.json")]
    [InlineData("measure", "plan", "car.json")]
    [InlineData("card", "car.json", "--output", "made")]
    [InlineData("figures", "car.json", "--figure", "brake-forces", "--output", "made")]
    [InlineData("story", "car.json", "--output", "made")]
    [InlineData("class", "sheets", "--secret", "a test secret", "--students", "1", "--output", "made")]
    [InlineData("jupyter", "install", "--prefix", "made")]
    public async Task What_needs_only_a_vehicle_file_works_anywhere(params string[] words)
    {
        await StarterAsync();
        (int code, string output, string error) = await packages.ToolAsync(words);
        Assert.Equal((ExitCode.Success, ""), (code, error));
        Assert.NotEmpty(output);
        string made = Path.Combine(packages.Work, "made");
        if (Directory.Exists(made))
        {
            Directory.Delete(made, recursive: true);
        }
    }

    [Fact]
    public async Task The_example_of_the_packages_readme_builds_on_the_package_alone_and_answers_as_the_assembly()
    {
        await StarterAsync();
        string project = Directory.CreateDirectory(Path.Combine(packages.Work, "example")).FullName;
        using ZipArchive package = ZipFile.OpenRead(packages.Package("BrakeBalance", "nupkg"));
        string code = Example().Match(Text(package, "README.md").ReplaceLineEndings("\n")).Groups[1].Value;
        File.WriteAllText(Path.Combine(project, "Program.cs"), code.Replace("\"car.json\"", "args[0]", StringComparison.Ordinal));
        File.WriteAllText(Path.Combine(project, "example.csproj"), $"""
            <Project Sdk="Microsoft.NET.Sdk">
              <PropertyGroup>
                <OutputType>Exe</OutputType>
                <TargetFramework>net10.0</TargetFramework>
                <ImplicitUsings>enable</ImplicitUsings>
                <Nullable>enable</Nullable>
                <TreatWarningsAsErrors>true</TreatWarningsAsErrors>
                <NuGetAudit>false</NuGetAudit>
                <UseSharedCompilation>false</UseSharedCompilation>
              </PropertyGroup>
              <ItemGroup>
                <PackageReference Include="BrakeBalance" Version="{PackageFeed.Version}" />
              </ItemGroup>
            </Project>
            """);
        string cache = Environment.GetEnvironmentVariable("NUGET_PACKAGES")
            ?? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");
        File.WriteAllText(Path.Combine(project, "nuget.config"), $"""
            <configuration>
              <packageSources><add key="feed" value="{packages.Feed}" /></packageSources>
              <fallbackPackageFolders><add key="cache" value="{cache}" /></fallbackPackageFolders>
            </configuration>
            """);
        await packages.DotnetAsync("build", project, "-nodeReuse:false", "--output", Path.Combine(project, "built"));
        string output = await packages.DotnetAsync(Path.Combine(project, "built", "example.dll"), Path.Combine(packages.Work, "car.json"));

        Vehicle car = VehicleFile.TryRead(StarterFile.Text()).Reading!.Vehicle;
        LockUp dry = new BalanceModel(car, car.LoadCases[0]).FirstLockUp(0.8)!;
        string expected = FormattableString.Invariant(
            $"{dry.First} first at {dry.At.BrakingRate:0.00} g, {dry.At.MasterPressure.Bars:0} bar\n");
        Assert.Equal(expected, output);
    }

    [Fact]
    public void The_readme_of_the_repository_shows_the_same_example_and_both_packages()
    {
        using ZipArchive package = ZipFile.OpenRead(packages.Package("BrakeBalance", "nupkg"));
        string readme = File.ReadAllText(RepositoryRoot.File("README.md"));
        Assert.Contains(Example().Match(Text(package, "README.md").ReplaceLineEndings("\n")).Value, readme, StringComparison.Ordinal);
        Assert.Matches(@"\ndotnet tool install --global BrakeBalance\.Tool ", readme);
        Assert.Matches(@"\ndotnet add package BrakeBalance ", readme);
    }

    // Written by the tool itself, once.
    private async Task<string> StarterAsync()
    {
        string car = Path.Combine(packages.Work, "car.json");
        if (!File.Exists(car))
        {
            Assert.Equal(ExitCode.Success, (await packages.ToolAsync("starter", "car.json")).Code);
            Assert.Equal(StarterFile.Text(), File.ReadAllText(car));
        }

        return car;
    }

    private static string Text(ZipArchive package, string name)
    {
        using var reader = new StreamReader(package.GetEntry(name)!.Open());
        return reader.ReadToEnd();
    }

    [GeneratedRegex("```csharp\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Example();
}
