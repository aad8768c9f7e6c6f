using BenchmarkDotNet.Running;

// dotnet run -c Release --project tests/BrakeBalance.Benchmarks -- --filter '*'
BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
