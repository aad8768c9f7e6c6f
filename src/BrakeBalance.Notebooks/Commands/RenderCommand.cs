using System.CommandLine;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Documents;
using BrakeBalance.Notebooks.Execution;
using BrakeBalance.Notebooks.Execution.Children;
using BrakeBalance.Notebooks.Pages;
using BrakeBalance.Notebooks.Publishing;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>render</c>: runs the notebooks and writes a page for each.</summary>
internal static class RenderCommand
{
    private const int LongestLimit = 86_400;

    public static Command Create(Terminal terminal)
    {
        var notebook = Options.Of<string[]>("--notebook",
            "Only the notebook of this name or number, such as 01 or lessons/01; may be given several times", "NAME", []);
        var vehicle = new Option<string[]>("--vehicle")
        {
            Description = Invariant.Text($"Your own vehicle file, in place of the invented car; of up to "
                + $"{SetUpComparison.Most} the pages show the first, and {ComparisonPage.FileName} sets all side by side"),
            HelpName = "FILE",
            DefaultValueFactory = _ => [],
        };
        var bench = Options.Of<string?>("--bench", "Your own bench file, in place of the invented job", "FILE");
        Option<string[]> set = VehicleOptions.Set();
        Option<string> units = VehicleOptions.Units();
        var output = Options.Of<string?>("--output", "The folder for the pages [default: out in the repository]", "FOLDER");
        var single = Options.Of<bool>("--single-file",
            "Puts the calculation into each page (about 5 MB), so that one file can be passed on alone");
        var engine = Options.Of<string>("--engine", "What runs the cells: interactive (the embedded kernel) or script (plain C# scripting)",
            "interactive|script", "interactive");
        engine.AcceptOnlyFromAmong(StringComparer.OrdinalIgnoreCase, "interactive", "script");
        var limit = Options.Of<int>("--cell-limit",
            "The longest that a cell may take, in seconds; a notebook whose cell takes longer fails, and the others go on", "SECONDS", 120);
        var again = Options.Of<bool>("--again", "Runs every notebook, also those of which nothing has changed since their pages were made");
        var watch = Options.Of<bool>("--watch",
            "Renders again whenever a notebook, data or your own file changes, and open pages load themselves again");
        Option<bool> force = OutputFiles.Force();
        var command = new Command(
            "render",
            "Run the notebooks and write a page for each, and an index, into a folder. Notebooks are programs: run only those you trust. "
            + "Their cells run in a process of their own, with your rights.")
        {
            notebook, vehicle, bench, set, units, output, single, engine, limit, again, watch, force,
        };
        command.SetAction((parsed, cancellation) => parsed.GetValue(watch)
            ? RenderWatch.RunAsync(terminal, told => RenderAsync(parsed, told, cancellation), cancellation)
            : RenderAsync(parsed, _ => { }, cancellation));
        return command;

        // The user's files that the pages rest on are told before anything runs, so that a watch knows what to look at.
        async Task<int> RenderAsync(ParseResult parsed, Action<string> told, CancellationToken cancellation)
        {
            List<string> problems = [];
            IReadOnlyList<NotebookDocument> notebooks = Notebooks(parsed.GetRequiredValue(notebook), problems);
            string[] vehicles = parsed.GetRequiredValue(vehicle);
            NotebookInput input = Input(terminal, vehicles.FirstOrDefault(), parsed.GetRequiredValue(set), problems);
            (string Name, Vehicle Car)[] setUps = SetUps(terminal, vehicles, input, problems);
            Bench(parsed.GetValue(bench), problems);
            var files = new OutputFiles(problems, parsed.GetValue(force));
            string folder = files.Folder(parsed.GetValue(output) ?? Repository.Folder("out"));
            bool whole = parsed.GetRequiredValue(notebook).Length == 0;
            PageFiles(notebooks, whole, setUps.Length > 0, folder, files, problems);
            if (parsed.GetRequiredValue(limit) is not (>= 1 and <= LongestLimit))
            {
                problems.Add(Invariant.Text($"--cell-limit {parsed.GetRequiredValue(limit)}: this is no time for a cell. "
                    + $"Accepted: whole seconds from 1 to {LongestLimit}."));
            }

            string? benchFile = parsed.GetValue(bench);
            string[] own = [.. WithLogs(input.VehiclePath), .. benchFile is null ? [] : (string[])[Path.GetFullPath(benchFile)]];
            string[] others = [.. vehicles.Skip(1).SelectMany(WithLogs)];
            own.Concat(others).ToList().ForEach(told);
            BadInputException.ThrowIfAny(problems);
            input.MakeCurrent();
            if (benchFile is not null)
            {
                BenchInput.MakeCurrent(benchFile);
            }

            string chosen = parsed.GetRequiredValue(units).ToLowerInvariant();
            Display.Units = Display.Parse(chosen) ?? UnitSystem.Si;
            Environment.SetEnvironmentVariable(Display.Variable, chosen);
            List<KeyValuePair<string, string>> facts = Facts(input, Display.Units), example = Facts(NotebookInput.Example, Display.Units);
            EngineKind kind = Enum.Parse<EngineKind>(parsed.GetRequiredValue(engine), ignoreCase: true);
            bool fresh = parsed.GetValue(again), watched = parsed.GetValue(watch);
            string inputs = Inputs([chosen, kind.ToString(), .. input.Overrides], own);
            var kept = new KeptRuns(Path.Combine(folder, KeptSite.Place), inputs);
            string key = KeptRuns.Fingerprint(
                [Invariant.Text($"{watched} {parsed.GetValue(single)}"), .. notebooks.Select(kept.Key)], others);
            if (whole && !fresh && KeptSite.Standing(folder, key) is { } standing)
            {
                terminal.Output.WriteLine(Invariant.Text($"Nothing has changed: the pages of {standing.Notebooks} notebooks ")
                    + $"stand as they are (--again runs them all the same). Open {Path.Combine(folder, PageNames.Index)}");
                return ExitCode.Success;
            }

            ExecutedNotebook?[] known = [.. notebooks.Select(document => fresh ? null : kept.Find(document))];
            NotebookDocument[] changed = [.. notebooks.Where((_, i) => known[i] is null)];
            // While the cells run in their process, the pages that need no notebook are made in this one.
            List<string> unmade = [];
            var car = new Lazy<VehicleReading>(input.Load);
            Task<(RenderedPage[] Answers, RenderedPage[] Stories)> beside = Task.Run(Others, cancellation);
            List<string> failures;
            var ran = new Queue<ExecutedNotebook>();
            await using (var engines = new ChildEngines(kind, TimeSpan.FromSeconds(parsed.GetRequiredValue(limit))))
            {
                ran = new(await RenderProgress.ShowAsync(
                    terminal, changed, progress => new NotebookRunner(engines.StartAsync, CellEngines.Beside(kind))
                        .RunAsync(changed, progress, cancellation)).ConfigureAwait(false));
                failures = [.. engines.LeftRunning];
            }

            (RenderedPage[] answers, RenderedPage[] stories) = await beside.ConfigureAwait(false);
            failures.AddRange(unmade);

            foreach ((NotebookDocument document, ExecutedNotebook run) in changed.Zip(ran))
            {
                kept.Keep(document, run);
            }

            ExecutedNotebook[] executed = [.. known.Select(run => run ?? ran.Dequeue())];
            var options = new SiteOptions
            {
                SingleFile = parsed.GetValue(single),
                IsWhole = whole,
                IsWatched = watched,
                Facts = facts,
                Surroundings = CellSurroundings.Of(input, benchFile, WithLogs(input.VehiclePath).Skip(1)),
                FactsOf = run => Facts(run, input, benchFile, facts, example),
                Answers = answers,
                Stories = stories,
            };
            SiteResult site = Site.Write(Entries(notebooks, executed, folder), folder, options);
            failures.AddRange(site.Faults.Select(fault => $"{fault.Page}: no page was made; {PartFault.Words(fault.Fault, parsed)}"));
            int code = Report(terminal, executed, changed.Length, site, failures, folder);
            if (whole && code == ExitCode.Success)
            {
                KeptSite.Keep(folder, key, site.Files, executed.Length);
            }

            return code;

            (RenderedPage[] Answers, RenderedPage[] Stories) Others() => !whole
                ? (Standing(folder, ComparisonPage.FileName, LivePage.FileName, QuestionsPage.FileName),
                    Standing(folder, StoryPage.FileName))
                : ([
                    .. setUps.Length == 0 ? [] : Page(ComparisonPage.FileName, () => ComparisonPage.Render(
                        setUps, CompareCommand.Of(setUps, Display.Units, null), Display.Units), parsed, unmade),
                    .. Page(LivePage.FileName, () => LivePage.Render(
                        input.Text(), SourceText.Of(car.Value.Vehicle)?.Logs, Display.Units), parsed, unmade),
                    .. Page(QuestionsPage.FileName, () => QuestionsPage.Render(
                        car.Value, Display.Units, [.. notebooks.Select(document => document.Name)], facts), parsed, unmade),
                ], [
                    .. Page(StoryPage.FileName, () => StoryPage.Render(car.Value.Vehicle, Display.Units, facts), parsed, unmade),
                ]);
        }
    }

    // What stands for all that notebooks read beside their own text: this program, the data, what is said on the command line.
    private static string Inputs(IEnumerable<string> words, IEnumerable<string> own) => KeptRuns.Fingerprint(
        [Environment.Version.ToString(), .. words],
        [
            .. Directory.GetFiles(AppContext.BaseDirectory, "BrakeBalance*.dll").Order(StringComparer.Ordinal),
            .. Directory.GetFiles(AppContext.BaseDirectory, "BrakeBalance*.deps.json").Order(StringComparer.Ordinal),
            .. RenderWatch.Shared().Where(file => !file.EndsWith(".ipynb", StringComparison.OrdinalIgnoreCase)),
            .. own,
        ]);

    /// <summary>A vehicle file and the logs that it names; the file alone where it cannot be read.</summary>
    private static IEnumerable<string> WithLogs(string path)
    {
        MeasurementLogs? logs = null;
        try
        {
            logs = VehicleFile.Load(path).Logs;
        }
        catch (VehicleFileException)
        {
            // Its problems are told by whoever needs the car.
        }

        return new[] { Path.GetFullPath(path), logs?.Gauges, logs?.Stops, logs?.Series }.OfType<string>();
    }

    /// <summary>All notebooks in reading order: those that ran, and those whose pages stand in the folder.</summary>
    private static SiteEntry[] Entries(IReadOnlyList<NotebookDocument> notebooks, ExecutedNotebook[] executed, string folder)
    {
        Dictionary<string, ExecutedNotebook> ran = notebooks.Zip(executed).ToDictionary(pair => pair.First.Path, pair => pair.Second);
        return
        [
            .. NotebookFile.In(Repository.Folder("notebooks")).Select(path =>
                ran.TryGetValue(path, out ExecutedNotebook? run) ? new SiteEntry(run, Group(path))
                : RenderedPage.StandingIn(folder, PageNames.FileFor(Path.GetFileNameWithoutExtension(path))) is { } page
                    ? SiteEntry.Of(page, Group(path)) : null).OfType<SiteEntry>(),
        ];
    }

    private static RenderedPage[] Standing(string folder, params string[] pages) =>
        [.. pages.Select(page => RenderedPage.StandingIn(folder, page)).OfType<RenderedPage>()];

    /// <summary>A page that is no notebook; one that cannot be made stops no other.</summary>
    private static IReadOnlyList<RenderedPage> Page(string name, Func<RenderedPage> make, ParseResult parsed, List<string> failures)
    {
        try
        {
            return [make()];
        }
        catch (Exception exception)
        {
            failures.Add($"{name}: not made; {PartFault.Words(exception, parsed)}");
            return [];
        }
    }

    private static int Report(Terminal terminal, IReadOnlyList<ExecutedNotebook> executed, int changed, SiteResult site,
        List<string> failures, string folder)
    {
        foreach (ExecutedNotebook run in executed)
        {
            foreach (ExecutedCodeCell cell in run.Cells.OfType<ExecutedCodeCell>().Where(cell => cell.Failure is not null))
            {
                CellFailure failure = cell.Failure!;
                string line = failure.Line is { } number ? Invariant.Text($", line {number}") : "";
                terminal.Error.WriteLine($"{run.Name}, cell {cell.Id}{line}: {failure.Message}");
                terminal.Error.WriteLine($"    {failure.SourceLine ?? cell.Source.Split('\n')[0].Trim()}");
            }
        }

        failures.AddRange(site.Problems.Select(problem => problem.ToString()));
        failures.ForEach(terminal.Error.WriteLine);
        int failed = executed.Count(run => !run.Succeeded);
        string unchanged = changed == executed.Count ? ""
            : Invariant.Text($"; {executed.Count - changed} of them as they ran before, for nothing has changed in them");
        terminal.Output.WriteLine(Invariant.Text($"{executed.Count - failed} of {executed.Count} notebooks ran to their end")
            + $"{unchanged}. Open {Path.Combine(folder, PageNames.Index)}");
        return failed == 0 && failures.Count == 0 ? ExitCode.Success : ExitCode.Failed;
    }

    /// <summary>The pages' files: no two of one name, and none that somebody else wrote.</summary>
    private static void PageFiles(IReadOnlyList<NotebookDocument> notebooks, bool whole, bool several, string folder,
        OutputFiles files, List<string> problems)
    {
        foreach (IGrouping<string, NotebookDocument> page in notebooks.GroupBy(document =>
            PageNames.FileFor(document.Name), StringComparer.OrdinalIgnoreCase))
        {
            if (page.Count() > 1 || page.Key is PageNames.Index or StoryPage.FileName or QuestionsPage.FileName or LivePage.FileName
                or ComparisonPage.FileName)
            {
                problems.Add($"{string.Join(" and ", page.Select(document => document.Path))}: "
                    + $"would become {page.Key}, which another page is. Accepted: notebooks of different names.");
            }

            files.File(Path.Combine(folder, page.Key), "--output");
        }

        files.File(Path.Combine(folder, PageNames.Index), "--output");
        if (whole)
        {
            files.File(Path.Combine(folder, StoryPage.FileName), "--output");
            files.File(Path.Combine(folder, QuestionsPage.FileName), "--output");
            files.File(Path.Combine(folder, LivePage.FileName), "--output");
        }

        if (whole && several)
        {
            files.File(Path.Combine(folder, ComparisonPage.FileName), "--output");
        }
    }

    private static List<NotebookDocument> Notebooks(string[] wanted, List<string> problems)
    {
        string folder = Repository.Folder("notebooks");
        IReadOnlyList<string> all = NotebookFile.In(folder);
        HashSet<string> chosen = wanted.Length == 0 ? [.. all] : [];
        foreach (string name in wanted)
        {
            string[] named = [.. all.Where(path => IsNamed(Path.GetRelativePath(folder, path), name))];
            chosen.UnionWith(named);
            if (named.Length == 0)
            {
                IEnumerable<string> names =
                    all.Select(path => Path.ChangeExtension(Path.GetRelativePath(folder, path), null).Replace('\\', '/'));
                problems.Add($"--notebook {name}: there is no such notebook. There are: {string.Join(", ", names)}.");
            }
        }

        return NotebookFile.ReadAll(all.Where(chosen.Contains), NotebookFile.Read, problems);
    }

    /// <summary>
    /// By name or number: <c>01</c>, <c>01-name</c>, <c>lessons/01</c>; a name without a folder finds a notebook in any, a number only a
    /// main one.
    /// </summary>
    private static bool IsNamed(string path, string asked)
    {
        string own = Path.ChangeExtension(path, null).Replace('\\', '/');
        string name = asked.EndsWith(".ipynb", StringComparison.OrdinalIgnoreCase) ? asked[..^".ipynb".Length] : asked;
        return string.Equals(own, name, StringComparison.OrdinalIgnoreCase)
            || string.Equals(own[(own.LastIndexOf('/') + 1)..], name, StringComparison.OrdinalIgnoreCase)
            || (name.Length > 0 && char.IsAsciiDigit(name[^1]) && own.StartsWith(name + "-", StringComparison.OrdinalIgnoreCase));
    }

    private static NotebookInput Input(Terminal terminal, string? vehicle, string[] set, List<string> problems)
    {
        IReadOnlyList<ValueOverride> overrides = VehicleOptions.Overrides(set, problems);
        string path = vehicle ?? Repository.Folder(NotebookInput.DefaultVehicle);
        VehicleOptions.Read(terminal, path, overrides, problems);
        return new NotebookInput(Path.GetFullPath(path), [.. overrides.Select(change => $"{change.Path}={change.Value}")]);
    }

    // The set-ups to compare: those named, the first with what --set changes; none when one is named.
    private static (string Name, Vehicle Car)[] SetUps(Terminal terminal, string[] paths, NotebookInput first, List<string> problems)
    {
        if (paths.Length > SetUpComparison.Most)
        {
            problems.Add(Invariant.Text($"--vehicle: {paths.Length} files. Accepted: 1 to {SetUpComparison.Most}."));
        }

        if (paths.Length < 2)
        {
            return [];
        }

        Vehicle?[] others = [.. paths.Skip(1).Select(path => VehicleOptions.Read(terminal, path, [], problems)?.Vehicle)];
        return problems.Count > 0 ? []
            : [(CompareCommand.NameOf(paths[0], paths), first.Load().Vehicle), .. paths.Skip(1).Zip(others, (path, car) =>
                (CompareCommand.NameOf(path, paths), car!))];
    }

    private static void Bench(string? path, List<string> problems)
    {
        try
        {
            _ = path is null ? null : BenchFile.Load(path);
        }
        catch (BenchFileException exception)
        {
            problems.AddRange(exception.Problems.Select(problem => $"{path}: {problem}"));
        }
    }

    private static NotebookGroup Group(string path) =>
        Path.GetFileName(Path.GetDirectoryName(path)) == "notebooks" ? NotebookGroup.Main : NotebookGroup.Lesson;

    /// <summary>What a notebook's page rests on: the reader's own files only where it shows them.</summary>
    private static List<KeyValuePair<string, string>> Facts(ExecutedNotebook run, NotebookInput input, string? bench,
        List<KeyValuePair<string, string>> own, List<KeyValuePair<string, string>> example)
    {
        bool Reads(string word) => run.Cells.OfType<ExecutedCodeCell>().Any(cell => cell.Source.Contains(word, StringComparison.Ordinal));
        bool isOwn = (!Reads("." + nameof(NotebookInput.Tests)) || input.HasOwnTests)
            && (!Reads(nameof(FootInput)) || FootInput.Load(input).IsAsked);
        List<KeyValuePair<string, string>> facts = Reads(nameof(NotebookInput)) || Reads(nameof(FootInput))
            ? isOwn ? own : example
            : [.. example.Where(fact => fact.Key == "Units")];

        return Reads(nameof(BenchInput))
            ? [new("Bench file", bench is null
                ? Path.GetFileName(BenchInput.Default) + ", an invented job" : Path.GetFileName(bench)), .. facts]
            : facts;
    }

    private static List<KeyValuePair<string, string>> Facts(NotebookInput input, UnitSystem units)
    {
        List<KeyValuePair<string, string>> facts = [new("Vehicle file", Path.GetFileName(input.VehiclePath))];
        if (input.Overrides.Count > 0)
        {
            facts.Add(new("Changed values", string.Join("; ", input.Overrides)));
        }

        if (input.Load().Vehicle.Uncertainty is not null)
        {
            facts.Add(new("Ranges of the file", "each at its middle, unless a figure or a number shows its band"));
        }

        facts.Add(PageShell.Units(units));
        return facts;
    }
}
