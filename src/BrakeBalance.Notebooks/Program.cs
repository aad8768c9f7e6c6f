using BrakeBalance.Notebooks.Commands;

return await CommandLine.RunAsync(args, Terminal.OfProcess());
