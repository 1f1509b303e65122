using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Abaxial.Data.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class SampleRows : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "person_words",
                columns: table => new
                {
                    Word = table.Column<string>(type: "TEXT", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_person_words", x => new { x.Word, x.Person });
                });

            migrationBuilder.CreateTable(
                name: "sample_seals",
                columns: table => new
                {
                    Sha256 = table.Column<string>(type: "TEXT", nullable: false),
                    Sample = table.Column<string>(type: "TEXT", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_sample_seals", x => new { x.Sha256, x.Sample });
                });

            migrationBuilder.CreateTable(
                name: "samples",
                columns: table => new
                {
                    Key = table.Column<long>(type: "INTEGER", nullable: false),
                    Sample = table.Column<string>(type: "TEXT", nullable: false),
                    Number = table.Column<string>(type: "TEXT", nullable: true),
                    Host = table.Column<string>(type: "TEXT", nullable: true),
                    System = table.Column<string>(type: "TEXT", nullable: true),
                    Purpose = table.Column<string>(type: "TEXT", nullable: true),
                    Area = table.Column<string>(type: "TEXT", nullable: true),
                    Submitter = table.Column<string>(type: "TEXT", nullable: true),
                    TakenBy = table.Column<string>(type: "TEXT", nullable: true),
                    With = table.Column<string>(type: "TEXT", nullable: true),
                    Taken = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Promised = table.Column<DateTime>(type: "TEXT", nullable: true),
                    SnoozedUntil = table.Column<DateTime>(type: "TEXT", nullable: true),
                    IsOpen = table.Column<bool>(type: "INTEGER", nullable: false),
                    Standing = table.Column<string>(type: "TEXT", nullable: true),
                    LateBlight = table.Column<double>(type: "REAL", nullable: true),
                    Leader = table.Column<string>(type: "TEXT", nullable: true),
                    LeaderPercent = table.Column<int>(type: "INTEGER", nullable: true),
                    Diagnosed = table.Column<string>(type: "TEXT", nullable: false),
                    Photographs = table.Column<int>(type: "INTEGER", nullable: false),
                    FirstPhotograph = table.Column<string>(type: "TEXT", nullable: true),
                    Looks = table.Column<int>(type: "INTEGER", nullable: false),
                    Waiting = table.Column<double>(type: "REAL", nullable: false),
                    Entries = table.Column<int>(type: "INTEGER", nullable: false),
                    Knowledge = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_samples", x => x.Key);
                });

            migrationBuilder.CreateTable(
                name: "samples_made",
                columns: table => new
                {
                    Id = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_samples_made", x => x.Id);
                });

            migrationBuilder.CreateIndex(
                name: "IX_person_words_Person",
                table: "person_words",
                column: "Person");

            migrationBuilder.CreateIndex(
                name: "IX_sample_seals_Person",
                table: "sample_seals",
                column: "Person");

            migrationBuilder.CreateIndex(
                name: "IX_samples_IsOpen_Waiting_Key",
                table: "samples",
                columns: new[] { "IsOpen", "Waiting", "Key" });

            migrationBuilder.CreateIndex(
                name: "IX_samples_Sample",
                table: "samples",
                column: "Sample",
                unique: true);

            migrationBuilder.Sql(Search.WordIndex.CreateSqlite);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql(Search.WordIndex.DropSqlite);

            migrationBuilder.DropTable(
                name: "person_words");

            migrationBuilder.DropTable(
                name: "sample_seals");

            migrationBuilder.DropTable(
                name: "samples");

            migrationBuilder.DropTable(
                name: "samples_made");
        }
    }
}
