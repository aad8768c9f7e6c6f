// Loaded by the first code cell of every notebook. The paths count from this file.
// A missing file is reported with the path as it is written here, so the first path says what to do about it;
// ".." takes those words out again.
#r "../NOT BUILT YET - in the folder of the repository run: dotnet build -c Release/../src/BrakeBalance.Charts/bin/Release/net10.0/BrakeBalance.Charts.dll"
#r "../src/BrakeBalance.Charts/bin/Release/net10.0/BrakeBalance.dll"
#r "../src/BrakeBalance.Charts/bin/Release/net10.0/UnitsNet.dll"
#r "../src/BrakeBalance.Charts/bin/Release/net10.0/Microsoft.Data.Analysis.dll"
#r "../src/BrakeBalance.Charts/bin/Release/net10.0/Plotly.NET.dll"

global using BrakeBalance;
global using BrakeBalance.Charts;
global using Microsoft.Data.Analysis;
global using UnitsNet;

BrakeBalance.Charts.Outputs.KernelFormatters.Register();
