using System.Diagnostics;
using System.Globalization;
using BenchmarkDotNet.Running;
using BrakeBalance.Benchmarks;
using BrakeBalance.Choosing;
using BrakeBalance.Days;
using BrakeBalance.Fuzz;

// dotnet run -c Release --project tests/BrakeBalance.Benchmarks -- --filter '*'
// dotnet run -c Release --project tests/BrakeBalance.Benchmarks -- fuzz [COUNT] [SEED] [FIRST] [EVERY] [QUICK]
//   of the accepted cases of a kind every EVERY-th (5) goes through every command, every QUICK-th (1) is asked a quick question
// dotnet run -c Release --project tests/BrakeBalance.Benchmarks -- case SEED NUMBER
// dotnet run -c Release --project tests/BrakeBalance.Benchmarks -- page FILE
// dotnet run -c Release --project tests/BrakeBalance.Benchmarks -- next COUNT SEED
//   the stop worth most each time against the plan as it stands, on COUNT random cars
// dotnet run -c Release --project tests/BrakeBalance.Benchmarks -- coverage DAYS SEED
//   where the truth lies within what the fit says of it; data/references/interval-coverage.csv is 2000 1
//
// dotnet run -c Release --project tests/BrakeBalance.Benchmarks -- choose CAR TARGETS PARTS
//   how long every combination takes to be tried, and how long the sets to show take to be found
if (args is ["choose", var ofCar, var targets, var parts])
{
    var choice = Choice.Of(File.ReadAllText(ofCar), File.ReadAllText(targets), File.ReadAllText(parts));
    var watch = Stopwatch.StartNew();
    long tried = 0;
    ChoiceResult result = ChoiceResult.Of(choice, 3, new Progress<int>(_ => Interlocked.Exchange(ref tried, watch.ElapsedMilliseconds)));
    Console.WriteLine(FormattableString.Invariant(
        $"{result.Combinations:#,0} combinations, {result.Cheap:#,0} meet the cheap targets, {result.Shown.Count} shown"));
    Console.WriteLine(FormattableString.Invariant($"tried {tried / 1e3:0.0} s, all {watch.Elapsed.TotalSeconds:0.0} s"));
    return 0;
}

if (args is ["coverage", var days, var from])
{
    Coverage.Write(int.Parse(days, CultureInfo.InvariantCulture), int.Parse(from, CultureInfo.InvariantCulture), Console.WriteLine);
    return 0;
}

if (args is ["next", var cars, var by])
{
    NextStopRun.Write(int.Parse(cars, CultureInfo.InvariantCulture), int.Parse(by, CultureInfo.InvariantCulture), Console.WriteLine);
    return 0;
}

if (args is ["page", var file])
{
    await PageSpeed.ReadAsync(file, Console.WriteLine);
    return 0;
}

if (args is ["case", var of, var which])
{
    Console.WriteLine(FuzzCase.Of(int.Parse(of, CultureInfo.InvariantCulture), int.Parse(which, CultureInfo.InvariantCulture)).Text);
    return 0;
}

if (args is not ["fuzz", .. string[] numbers])
{
    BenchmarkSwitcher.FromAssembly(typeof(FuzzRun).Assembly).Run(args);
    return 0;
}

int Number(int index, int unless) => numbers.Length > index ? int.Parse(numbers[index], CultureInfo.InvariantCulture) : unless;
(int count, int seed, int first, int every, int quick) =
    (Number(0, 200_000), Number(1, 1), Number(2, 0), Number(3, 5), Number(4, 1));
int told = 0;
FuzzReport report = await FuzzReport.RunAsync(
    seed,
    Enumerable.Range(first, count),
    (_, accepted) => accepted % every == 0 ? FuzzDepth.Every : accepted % quick == 0 ? FuzzDepth.Quick : FuzzDepth.Read,
    (number, so) =>
    {
        foreach (string finding in so.Findings.Skip(told))
        {
            Console.WriteLine(finding);
        }

        told = so.Findings.Count;
        if ((number + 1) % 1000 == 0)
        {
            Console.Error.WriteLine(FormattableString.Invariant($"{number + 1 - first} of {count} cases, {told} findings"));
        }
    });
Console.WriteLine(FormattableString.Invariant($"{count} cases from seed {seed}"));
Console.WriteLine(report);
return report.Findings.Count == 0 ? 0 : 1;
