using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Abaxial.Data.Migrations.Postgres
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
                    Word = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_person_words", x => new { x.Word, x.Person });
                });

            migrationBuilder.CreateTable(
                name: "sample_seals",
                columns: table => new
                {
                    Sha256 = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Sample = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_sample_seals", x => new { x.Sha256, x.Sample });
                });

            migrationBuilder.CreateTable(
                name: "samples",
                columns: table => new
                {
                    Key = table.Column<long>(type: "bigint", nullable: false),
                    Sample = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Number = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Host = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    System = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Purpose = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Area = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Submitter = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    TakenBy = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    With = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Taken = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Promised = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    SnoozedUntil = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    IsOpen = table.Column<bool>(type: "boolean", nullable: false),
                    Standing = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    LateBlight = table.Column<double>(type: "double precision", nullable: true),
                    Leader = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    LeaderPercent = table.Column<int>(type: "integer", nullable: true),
                    Diagnosed = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Photographs = table.Column<int>(type: "integer", nullable: false),
                    FirstPhotograph = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Looks = table.Column<int>(type: "integer", nullable: false),
                    Waiting = table.Column<double>(type: "double precision", nullable: false),
                    Entries = table.Column<int>(type: "integer", nullable: false),
                    Knowledge = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_samples", x => x.Key);
                });

            migrationBuilder.CreateTable(
                name: "samples_made",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false)
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

            migrationBuilder.Sql(Search.WordIndex.CreatePostgres);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql(Search.WordIndex.DropPostgres);

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
