// Loaded by the first code cell of every notebook. The paths count from this file.
// A missing file is reported with the path as it is written here, so the first path says what to do about it;
// ".." takes those words out again.
#r "../NOT BUILT YET - in the folder of the repository run: dotnet build -c Release/../src/BrakeBalance.Charts/bin/Release/net10.0/BrakeBalance.Charts.dll"
#r "../src/BrakeBalance.Charts/bin/Release/net10.0/BrakeBalance.dll"
#r "../src/BrakeBalance.Charts/bin/Release/net10.0/UnitsNet.dll"
#r "../src/BrakeBalance.Charts/bin/Release/net10.0/Microsoft.Data.Analysis.dll"
#r "../src/BrakeBalance.Charts/bin/Release/net10.0/Plotly.NET.dll"

global using BrakeBalance;
global using BrakeBalance.Answers;
global using BrakeBalance.Assist;
global using BrakeBalance.Balance;
global using BrakeBalance.Bench;
global using BrakeBalance.Brakes;
global using BrakeBalance.Charts;
global using BrakeBalance.Charts.Exploring;
global using BrakeBalance.Charts.Figures;
global using BrakeBalance.Charts.Lessons;
global using BrakeBalance.Charts.Sheets;
global using BrakeBalance.Charts.Tables;
global using BrakeBalance.Choosing;
global using BrakeBalance.Hydraulics;
global using BrakeBalance.Measurements;
global using BrakeBalance.Pedals;
global using BrakeBalance.Rules;
global using BrakeBalance.Stops;
global using BrakeBalance.Summaries;
global using BrakeBalance.Teaching;
global using BrakeBalance.Tyres;
global using BrakeBalance.Vehicles;
global using BrakeBalance.Vehicles.Files;
global using Microsoft.Data.Analysis;
global using UnitsNet;
global using UnitSystem = BrakeBalance.Answers.UnitSystem;

// A decimal comma in a picture's numbers would break it, whatever the language of the computer.
System.Globalization.CultureInfo.DefaultThreadCurrentCulture = System.Globalization.CultureInfo.InvariantCulture;
BrakeBalance.Charts.Outputs.KernelFormatters.Register();
